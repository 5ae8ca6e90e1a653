"""The local page: signs drawn while one types, for those who do not use a terminal.

`server.py` is the standard library's, `guard.py` says who may ask, `routes.py` what there is to ask for. Everything
that reads what a person typed runs in supervised processes (`desk.py`, `work.py`), which are ended when they hang; the
server itself only passes bytes on. `page.py` writes the one page.
"""
