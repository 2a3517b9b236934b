"""Books of timber: what wood, sheets and fasteners resist, by NDS or by EN 1995-1-1.

Read ``terms/`` (how a book is asked, and answers), then ``books``: the one face, and which book
counts. ``nds/`` and ``en1995/`` are the books themselves, each with its relations and, in
``standard``, the object that has the face.
"""
