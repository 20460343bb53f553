"""In: the proofed project. Out: every HTML page of the site, and the data file of a pattern."""

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from urllib.parse import quote, urlsplit

from sizewright.base.language import ENGLISH, later, named, tr
from sizewright.base.printing import exact_text
from sizewright.base.units import base_unit
from sizewright.grade.graded import Measured, Values
from sizewright.proof.proofed import Proofed
from sizewright.publish import view_method, view_rules, view_terms
from sizewright.publish.card import Card
from sizewright.publish.departures_data import departures_data
from sizewright.publish.drawn import drawn_files
from sizewright.publish.editions import editions
from sizewright.publish.joined import joined
from sizewright.publish.kept import Kept
from sizewright.publish.links import Links
from sizewright.publish.offered import papers_view
from sizewright.publish.output import Output
from sizewright.publish.print_job import Printed
from sizewright.publish.structured import collection_data, pattern_data
from sizewright.publish.theme import Theme
from sizewright.publish.view import Link, TextView
from sizewright.publish.view_card import CardView
from sizewright.publish.view_collection import card_views, filters, find_view
from sizewright.publish.view_pattern import pattern_path, pattern_view
from sizewright.publish.view_site import Page, Site
from sizewright.publish.view_terms import Terms
from sizewright.publish.view_text import introduction, technique_view, text_view
from sizewright.publish.view_words import WordsView
from sizewright.publish.within import ALONE, START, Within
from sizewright.publish.yarn_data import yarn_data
from sizewright.read.pattern import Pattern
from sizewright.read.project import Project
from sizewright.read.trade_words import Country

# Pages every site has. A page of `content/pages` with one of these names is the introduction of that page.
_METHOD = later("How the numbers are worked")
_RULES = later("What is checked")
_KNITTING = Link(later("Your knitting"), "knitting.html")
_OWN = ("index", "knitting", "abbreviations", "method", "rules", "404")


def site_pages(
    project: Project,
    proofed: Sequence[Proofed],
    kept: Sequence[Card],
    theme: Theme,
    printed: Mapping[str, Printed] = MappingProxyType({}),
    within: Within = ALONE,
) -> Iterator[Output]:
    """Every page. `kept` are the cards of patterns whose last good pages stay as they are: they are only listed.

    `printed` tells what is known of the PDFs by their paths. With several languages `within` tells in which of them the
    pages are; it is the one that is spoken, and the project and what is proofed have been translated.

    Raises BadTheme where a template cannot be used.
    """
    files = {output.path: output.content for output in theme.assets()}
    yield from _Pages(project, proofed, kept, theme, printed, within, files).all()


def page_paths(
    project: Project, proofed: Sequence[Proofed], kept: Sequence[Kept], *, first: bool = True
) -> frozenset[str]:
    """Where the pages are that something leads to; `first` is the language of the sources."""
    techniques = [f"techniques/{one.name}.html" for one in project.techniques]
    names = (*(each.graded.pattern.name for each in proofed), *(each.listed.card.name for each in kept))
    return frozenset(
        (
            START,
            *map(pattern_path, names),
            *techniques,
            *(("techniques/index.html",) if techniques else ()),
            *(f"{page.name}.html" for page in project.pages if page.name not in _OWN),
            view_terms.PATH,
            _KNITTING.href,
            *((view_method.PATH, view_rules.PATH) if first else ()),
        )
    )


def data_page(proofed: Proofed, project: Project) -> bytes:
    """`patterns/NAME.json`: the numbers, exact, and the card, for other programs and for the next run."""
    graded = proofed.graded
    told = {
        "title": graded.pattern.header.title,
        "studio": project.studio.name,
        "sizes": graded.sizes,
        "quantities": [{"name": named.name, **_exact(named.result)} for named in graded.quantities.values()],
        "finished": [_measured(measured) for measured in graded.finished],
        "yarn": [yarn_data(need) for need in proofed.worked.yarns],
        **departures_data(proofed.worked),
        "card": Card.of(proofed).as_json(),
    }
    return (json.dumps(told, ensure_ascii=False, indent=1) + "\n").encode()


def _exact(values: Values) -> Mapping[str, str | list[str]]:
    return {"unit": base_unit(values.dimension), "values": [exact_text(value) for value in values.values]}


def _measured(measured: Measured) -> Mapping[str, str | list[str] | None]:
    ease = None if measured.ease is None else [exact_text(value) for value in measured.ease]
    body = measured.body.name if measured.body else None
    return {"label": named(measured.label), **_exact(measured.finished), "body": body, "ease": ease}


@dataclass(frozen=True, slots=True)
class _Pages:
    project: Project
    proofed: Sequence[Proofed]
    kept: Sequence[Card]
    theme: Theme
    printed: Mapping[str, Printed]
    within: Within
    files: Mapping[str, bytes]
    joined: dict[str, Output] = field(default_factory=dict)

    def all(self) -> Iterator[Output]:
        yield from self.pages()
        yield from self.joined.values()

    def pages(self) -> Iterator[Output]:
        yield self.collection()
        yield from self.patterns()
        yield from self.techniques()
        for page in self.project.pages:
            if page.name not in _OWN:
                yield self.text(page)
        yield self.abbreviations()
        yield self.knitting()
        if self.within.first:  # written for those who design and check, from the program's own words
            yield self.method()
            yield self.rules()
            yield self.not_found()

    def cards(self) -> tuple[Card, ...]:
        return (*map(Card.of, self.proofed), *self.kept)

    def links(self, home: str) -> Links:
        pictures, within = self.project.folder / "content" / "media", self.within
        address = self.project.studio.address
        return Links(home, address, pictures=pictures, below=within.below, untranslated=within.untranslated)

    def output(self, template: str, page: Page, site: Site, **data: object) -> Output:
        page = replace(
            page,
            languages=self.within.switch(page.path, site.root),
            translations=self.within.translations(page.path, self.project.studio.address),
        )
        html, made = joined(self.theme.render(template, site=site, page=page, **data), site.root, self.files)
        self.joined.update((output.path, output) for output in made)
        return Output(self.within.below + page.path, html.encode())

    def collection(self) -> Output:
        links = self.links("")
        site = site_view(self.project, links)
        cards = card_views(self.cards(), links)
        home = links.absolute("")
        page = Page(site.studio, site.description, "index.html", home, collection_data(site, home, cards))
        intro = self.intro("index", links)
        find = find_view(cards, self.project.techniques, metric_first=self.project.studio.metric_first)
        words = self.words() if any(one.words.differs(one.card.summary) for one in cards) else None
        data = {"cards": cards, "filters": filters(cards), "find": find, "intro": intro}
        return self.output("index.html", page, site, words=words, **data)

    def words(self) -> WordsView:
        """Those of a page of many texts: the terms that the studio shows first."""
        return WordsView(Country.US, self.project.studio.terms or Country.US)

    def patterns(self) -> Iterator[Output]:
        links = self.links("../")
        site = site_view(self.project, links)
        terms = Terms.of(self.project, links)
        for proofed in self.proofed:
            made = editions(proofed.graded.pattern, self.project.studio.papers, self.within.below)
            offered = papers_view(made, self.printed)
            view = replace(pattern_view(proofed.worked, self.project, links, terms), papers=offered)
            file = Card.of(proofed).picture
            picture = (links.full(file) or links.file(file)) if file else ""
            path = pattern_path(proofed.graded.pattern.name)
            page = Page(view.title, view.summary, path, view.address, pattern_data(view, site, picture=picture))
            yield self.output("pattern.html", page, site, pattern=view)
            yield from drawn_files(proofed.worked)

    def techniques(self) -> Iterator[Output]:
        if not self.project.techniques:
            return
        links = self.links("../")
        site = site_view(self.project, links)
        cards, terms = card_views(self.cards(), links), Terms.of(self.project, links)
        entries = []
        for technique in self.project.techniques:
            view = technique_view(technique, self.project, links, terms)
            path = f"techniques/{technique.name}.html"
            entries.append(Link(view.title, links.to(path), view.summary))
            page = Page(view.title, view.summary, path, links.absolute(path))
            used_in = _used_in(technique, cards)
            yield self.output("technique.html", page, site, technique=view, used_in=used_in)
        page = Page(tr("Techniques"), "", "techniques/index.html", links.absolute("techniques/index.html"))
        yield self.output("techniques.html", page, site, techniques=tuple(entries))

    def text(self, source: Pattern) -> Output:
        links = self.links("")
        site = site_view(self.project, links)
        view = text_view(source, self.project, links)
        path = f"{source.name}.html"
        return self.output("page.html", Page(view.title, view.summary, path, links.absolute(path)), site, text=view)

    def abbreviations(self) -> Output:
        links = self.links("")
        site = site_view(self.project, links)
        terms, path = Terms.of(self.project, links).views, view_terms.PATH
        page = Page(tr("Abbreviations"), "", path, links.absolute(path))
        intro = self.intro("abbreviations", links)
        return self.output("abbreviations.html", page, site, terms=terms, intro=intro, words=self.words())

    def method(self) -> Output:
        """How the numbers are worked: what a reader may want to know who is to trust them for a week."""
        links = self.links("")
        site = site_view(self.project, links)
        page = Page(tr(_METHOD), "", view_method.PATH, links.absolute(view_method.PATH))
        methods, intro = tuple(view_method.method_views()), self.intro("method", links)
        return self.output("method.html", page, site, methods=methods, intro=intro)

    def rules(self) -> Output:
        """What is checked before anything is published."""
        links = self.links("")
        site = site_view(self.project, links)
        page = Page(tr(_RULES), "", view_rules.PATH, links.absolute(view_rules.PATH))
        rules, intro = tuple(view_rules.rule_views()), self.intro("rules", links)
        return self.output("rules.html", page, site, rules=rules, intro=intro)

    def knitting(self) -> Output:
        """Everything somebody knits from this site; what it lists is known to their device alone."""
        links = self.links("")
        site = site_view(self.project, links)
        page = Page(tr(_KNITTING.text), "", _KNITTING.href, links.absolute(_KNITTING.href))
        return self.output("knitting.html", page, site, intro=self.intro("knitting", links))

    def not_found(self) -> Output:
        """The page a server gives for any address that leads nowhere, so its links start at the top of the site."""
        root = urlsplit(self.project.studio.address).path or "/"
        links = self.links(root)
        site = site_view(self.project, links)
        page = Page(tr("Page not found"), "", "404.html", "")
        return self.output("404.html", page, site, intro=self.intro("404", links))

    def intro(self, name: str, links: Links) -> TextView | None:
        """What the studio says at the top of a page that every site has."""
        found = next((page for page in self.project.pages if page.name == name), None)
        return introduction(found, self.project, links) if found else None


def _used_in(technique: Pattern, cards: Sequence[CardView]) -> tuple[Link, ...]:
    return tuple(Link(shown.card.title, shown.href) for shown in cards if technique.name in shown.card.techniques)


def site_view(project: Project, links: Links) -> Site:
    """What all pages share that these links are made for."""
    studio, home = project.studio, links.home
    techniques = (Link(tr("Techniques"), f"{home}techniques/index.html"),) if project.techniques else ()
    pages = sorted((page for page in project.pages if page.name not in _OWN), key=lambda page: page.header.title)
    return Site(
        studio=studio.name,
        description=studio.description,
        author=studio.author,
        language=studio.language,
        notice=studio.notice,
        root=links.root,
        home=home,
        places=(
            Link(tr("Patterns"), f"{home}index.html"),
            *techniques,
            Link(tr("Abbreviations"), f"{home}{view_terms.PATH}"),
            Link(tr(_KNITTING.text), f"{home}{_KNITTING.href}"),
        ),
        pages=(
            *(Link(page.header.title, home + quote(f"{page.name}.html")) for page in pages),
            *(
                _in_english(text, path, links)
                for text, path in ((_METHOD, view_method.PATH), (_RULES, view_rules.PATH))
            ),
        ),
    )


def _in_english(text: str, path: str, links: Links) -> Link:
    """The way to a page that is there in English alone."""
    elsewhere = path in links.untranslated
    return Link(
        text if elsewhere else tr(text),
        (links.root if elsewhere else links.home) + path,
        language=ENGLISH if elsewhere else "",
    )
