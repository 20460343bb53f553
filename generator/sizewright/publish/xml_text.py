"""In: an XML tree. Out: its bytes."""

import re
from xml.etree.ElementTree import Element, indent, tostring

# What XML 1.0 (2.2, Char) cannot hold, however it is written.
_NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def as_xml(root: Element) -> bytes:
    """The tree as UTF-8, one element a line. The tree is changed: spaces between elements, signs XML lacks left out."""
    for element in root.iter():
        element.text = _NOT_XML.sub("", element.text) if element.text else element.text
        element.attrib.update({name: _NOT_XML.sub("", value) for name, value in element.attrib.items()})
    indent(root)
    content: bytes = tostring(root, encoding="utf-8", xml_declaration=True)
    return content + b"\n"
