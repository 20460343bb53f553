"""The faults of translations: what can be wrong between a source and `NAME.CODE.md` beside it, one table."""

from sizewright.base.finding import Level, Rule

UNREADABLE_TRANSLATION = Rule(
    "unreadable-translation",
    Level.ERROR,
    """A file of translations with something that is no pair: words of the source in a comment, and what they are.

**Why it matters.** Text that belongs to no words of the source would be lost, and one translation of two cannot stand.

**Example.** A title before the first comment; a comment without its `-->`; the same words translated in two ways.

**Instead.** A line `<!-- ## Brim -->`, and below it `## Bündchen`""",
)

STRAY_TRANSLATION = Rule(
    "stray-translation",
    Level.WARNING,
    """A file of translations beside no source, or in a language that the site is not published in.

**Why it matters.** Nobody would ever read it, and a misspelt name looks like a translation that is still to be written.

**Example.** `patterns/undercomb-hat.de.md` beside `patterns/undercombe-hat.md`; `hat.fr.md` where
`languages: [en, de]`; `hat.dee.md` and `hat_de.md` beside `hat.md`

**Instead.** Name the file like its source, and the language in `content/site.yaml`: `languages: [en, de, fr]`""",
)

UNTRANSLATED = Rule(
    "untranslated",
    Level.NOTE,
    """A source that is not translated into one of the languages of the site.

**Why it matters.** The site has no page of it in that language; links there lead to the page in the first one.

**Example.** `patterns/hat.md` without `patterns/hat.de.md`, where `languages: [en, de]`; a language that the program
has no words in, so that buttons, headings and instructions would be English there; a `site.yaml` with a description
and no `site.de.md`

**Instead.** `sizewright translate content/patterns/hat.md --into de` writes the file to be filled in. A studio that
translates only some of its sources turns the rule off: `rules: {untranslated: off}`""",
)

MISSING_TRANSLATION = Rule(
    "missing-translation",
    Level.WARNING,
    """Words of a source that are not translated though the file for the language is there.

**Why it matters.** The page shows them in the language of the source, in the middle of the other one.

**Example.** A paragraph that was added to `hat.md` and not yet to `hat.de.md`.

**Instead.** `sizewright translate content/patterns/hat.md --into de` adds what is missing, to be filled in.""",
)

STALE_TRANSLATION = Rule(
    "stale-translation",
    Level.WARNING,
    """A translation of words that the source does not hold any more.

**Why it matters.** The source says something else by now, so the old translation is not shown until somebody compares.

**Example.** `<!-- The brim is worn flat. -->` where the source says “The brim is turned up.”

**Instead.** Put the new words of the source into the comment and change the translation, or take the pair out.""",
)

OTHER_NUMBERS = Rule(
    "other-numbers",
    Level.ERROR,
    """A translation with other numbers or other `{…}` than the words it translates.

**Why it matters.** Numbers are worked out and proved in the source alone; a slip of the pen here is knitted.

**Example.** `Weave in 20 cm of {tail}.` translated with `10 cm`; a translation in which `{brim}` is left out; `three
times` translated as `zweimal`; `7 pm` as `7 Uhr`.

**Instead.** Every `{…}` as it is typed in the source, and every number, in figures or, up to twelve, in words: `2,5`
is `2.5`, `zwei` is `2` and `two`, `beide` may be, `19 Uhr` is `7 pm`. “One” alone is taken for an article. The figures
of a stitch's name are none: `2 M überz zus-str` for `ssk`.""",
)

OTHER_LINKS = Rule(
    "other-links",
    Level.ERROR,
    """A translation whose links or pictures do not lead to the same places as those of its source.

**Why it matters.** A link that is changed or left out leads readers of one language astray, and nobody tests it.

**Example.** `[blocking](../techniques/blocking.md)` translated as `[spannen](../techniques/spannen.md)`

**Instead.** `[spannen](../techniques/blocking.md)`; the address stays and leads to the page in the other language.""",
)

OTHER_SHAPE = Rule(
    "other-shape",
    Level.ERROR,
    """A translation that is a heading where its source is none, or the other way round, or that opens a passage.

**Why it matters.** Links lead to headings, and the contents of a page are made of them.

**Example.** `<!-- ## Brim -->` translated as `Bündchen`; a translation that holds `::: sizes S`

**Instead.** `## Bündchen`""",
)

TRANSLATING_RULES = tuple(value for value in dict(globals()).values() if isinstance(value, Rule))
