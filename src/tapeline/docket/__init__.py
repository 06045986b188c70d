"""The docket: the TOML file that a maker writes, the page edits and the workroom keeps.

>>> docket = docket_from_text('''
... [wearer]
... figure = "man"
... size = "M"
... [garment]
... looseness = "easy"
... ''')
>>> docket.style.name, docket.choices.looseness.side.equation()
('tee', 'looseness side = 3 cm')
"""

from tapeline.docket.docket import Docket
from tapeline.docket.orders import Order, orders
from tapeline.docket.read import docket_from, docket_from_text, read_docket
from tapeline.docket.template import template

__all__ = ["Docket", "Order", "docket_from", "docket_from_text", "orders", "read_docket", "template"]
