"""How parts are fastened: what each nail, screw and bolt is asked, and what it holds."""
