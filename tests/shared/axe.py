"""In: an open page. Out: what axe finds in it that keeps somebody from using it: nothing, where all is well."""

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page


def hindrances(page: Page, within: str | None = None) -> list[str]:
    """Each violation as "rule: element: how to mend it", in the whole page or in the element of a selector.

    What is in order is not told in full (half of the time); files of a page from disk cannot be loaded once more.
    """
    options = {"resultTypes": ["violations"], "preload": not page.url.startswith("file:")}
    found = Axe().run(page, context=within, options=options).response
    assert found["passes"], "nothing was looked at"
    return [
        f"{fault['id']}: {node['target']}: {node['failureSummary']}"
        for fault in found["violations"]
        for node in fault["nodes"]
    ]
