"""What the commands print: the first screen, the folder table, and what stands behind options.

Read ``first_screen``, ``folder``, ``sections`` (what options add), ``glance`` (the page's first
answer), then the listing that is asked for: sizes, sweep, stock, comparison.
"""
