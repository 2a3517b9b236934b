"""What is printed: the buyer's sheet, labels, the shop's pages.

Read ``gate`` (what may not be sold), ``sheet_facts`` and ``sheet``, ``label_sentences`` and
``label``, then ``shop_parts``, ``shop``, ``saw_page`` and ``stake_places``; ``stale`` compares.
"""
