"""In: the pages of a site and the address it is served from. Out: its sitemap (the protocol of sitemaps.org, 0.9)."""

from collections.abc import Iterable, Mapping
from urllib.parse import quote
from xml.etree.ElementTree import Element, SubElement

from sizewright.publish.xml_text import as_xml

SITEMAP = "sitemap.xml"
_NAMESPACE = "http://www.sitemaps.org/schemas/sitemap/0.9"
_START, _NOT_FOUND = "index.html", "404.html"


def sitemap(address: str, paths: Iterable[str], days: Mapping[str, str]) -> bytes:
    """The sitemap of all pages among the paths, sorted; `days` has the last change of those that tell one (ISO 8601).

    The page for what is not found is not listed.
    """
    root = Element("urlset", {"xmlns": _NAMESPACE})
    for path in sorted(paths):
        if path.endswith(".html") and path != _NOT_FOUND:
            place = SubElement(root, "url")
            below = "" if path == _START else quote(path)
            SubElement(place, "loc").text = f"{address.rstrip('/')}/{below}"
            if days.get(path):
                SubElement(place, "lastmod").text = days[path]
    return as_xml(root)
