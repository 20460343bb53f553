"""In: the page of a pattern in Chromium. Out: what a knitter does there and sees; for tests of knitting along."""

from playwright.sync_api import Page, expect


def begin(page: Page, name: str = "Gift") -> None:
    """A project is begun."""
    page.locator(".knit-new [name=name]").fill(name)
    page.get_by_role("button", name="Begin", exact=True).click()


def now(page: Page, words: str) -> None:
    """The row in hand says these words."""
    expect(page.locator(".knit-tick")).to_contain_text(words)


def do(page: Page, name: str) -> None:
    """A button of the part for knitting along is pressed."""
    page.locator(".knit").get_by_role("button", name=name, exact=True).click()
