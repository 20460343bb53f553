"""The faults of reading: what can be wrong with a source before any number is worked out, one table."""

from sizewright.base.finding import Level, Rule

UNREADABLE_HEADER = Rule(
    "unreadable-header",
    Level.ERROR,
    """A header (the lines between `---`) or a YAML file that cannot be read as YAML.

**Why it matters.** Sizes, gauge and title come from there; a guess at what was meant could change every number.

**Example.** `title: Hat: the warm one` (a second colon needs quotes).

**Instead.** `title: "Hat: the warm one"`""",
)

REPEATED_KEY = Rule(
    "repeated-key",
    Level.ERROR,
    """A key, size or name that is written twice.

**Why it matters.** Only one of the two can count, and the reader of the source cannot see which.

**Example.** Two lines `needles:` in one header; two lines `cast_on = …` in the grade blocks.

**Instead.** Keep one, or give the other a name of its own.""",
)

UNKNOWN_KEY = Rule(
    "unknown-key",
    Level.ERROR,
    """A key of the header that the tool does not know.

**Why it matters.** A misspelt `gauge` or `cautions` would otherwise be silently left out of the printed pattern.

**Example.** `needels: [4 mm]`

**Instead.** `needles: [4 mm]`""",
)

WRONG_VALUE = Rule(
    "wrong-value",
    Level.ERROR,
    """A value of the header that is not of the kind its key takes: a date, a list, a quantity with its unit.

**Why it matters.** “41” may be centimetres or inches; nothing is guessed.

**Example.** `head: 41`; `published: 1 March`

**Instead.** `head: 41 cm`; `published: 2026-03-01`""",
)

UNREADABLE_SIGN_OFF = Rule(
    "unreadable-sign-off",
    Level.WARNING,
    """A sign-off beside a pattern that cannot be read, or that no pattern belongs to.

**Why it matters.** What somebody signed off is not known then, and nothing can be compared with it.

**Example.** `hat.sign-off`, of which a line was taken out or broken in two by hand.

**Instead.** Take the file as it was written, or sign the pattern off again: `sizewright sign-off PATH --by NAME`""",
)

MISSING_TITLE = Rule(
    "missing-title",
    Level.ERROR,
    """A source without `title:` in its header.

**Why it matters.** The title names the page, the PDF and the entry of the feed.

**Example.** A header that begins with `summary:` and has no title.

**Instead.** `title: Fellside Hat`""",
)

UNREADABLE_FORMULA = Rule(
    "unreadable-formula",
    Level.ERROR,
    """A formula, or a line of a grade block, that does not follow the grading language.

**Why it matters.** A number that is not understood cannot be proved for anybody's size.

**Example.** `cast_on = around * `; `cast_on: 72`

**Instead.** `cast_on = around * stitch_gauge, nearest multiple of 4`""",
)

AMBIGUOUS_DIVISION = Rule(
    "ambiguous-division",
    Level.ERROR,
    """A division by a fraction that can be read in two ways.

**Why it matters.** `chest / 2/3` is a third of half the chest to one reader and one and a half chests to another.

**Example.** `chest / 2/3`

**Instead.** `chest / (2/3)` or `(chest / 2) / 3`""",
)

WRONG_LIST_LENGTH = Rule(
    "wrong-list-length",
    Level.ERROR,
    """A bracket list that has more or fewer values than the pattern has sizes.

**Why it matters.** Every size after the missing value would read its neighbour's number.

**Example.** `4 (4, 5)` in a pattern of six sizes.

**Instead.** `4 (4, 5, 5, 6, 6)`, or one number alone where it is the same for all sizes.""",
)

UNKNOWN_UNIT = Rule(
    "unknown-unit",
    Level.ERROR,
    """A word after a number that is not a unit the tool knows.

**Why it matters.** Without the unit a measurement cannot be compared with a gauge.

**Example.** `4 cn`

**Instead.** `4 cm`; known are st, row, rnd, mm, cm, m, in, ft, yd, g, kg, oz, lb and %.""",
)

UNKNOWN_SIZE = Rule(
    "unknown-size",
    Level.ERROR,
    """A passage for a size that the header does not list.

**Why it matters.** Nobody would ever read the passage, and the size that was meant would miss it.

**Example.** `::: sizes Todler`

**Instead.** `::: sizes Toddler`""",
)

UNCLOSED = Rule(
    "unclosed",
    Level.ERROR,
    """A block, passage, brace or bracket that is opened and never closed.

**Why it matters.** Everything after it would belong to it.

**Example.** `Cast on {cast_on sts.`

**Instead.** `Cast on {cast_on} sts.`""",
)

UNKNOWN_BLOCK = Rule(
    "unknown-block",
    Level.ERROR,
    """A passage, or a fenced block, whose word is nearly one the tool knows.

**Why it matters.** A misspelt `grade` block would be printed as text and none of its promises kept.

**Example.** a fence that begins with three backticks and `graed`

**Instead.** `grade`, `work`, `stitch NAME`, `chart NAME`, `schematic`, or `::: sizes A, B`, `::: learners`""",
)

UNKNOWN_STYLE = Rule(
    "unknown-style",
    Level.ERROR,
    """A word after the colon in braces that names no style of printing.

**Why it matters.** The number would be printed otherwise than the designer meant.

**Example.** `{turns:tims}`

**Instead.** `{turns:times}`""",
)

IDLE_BRACES = Rule(
    "idle-braces",
    Level.ERROR,
    """Braces where no number is worked out: in the header, or in the words of a picture.

**Why it matters.** They would be printed as they stand, and the reader would find a formula in the place of a number.

**Example.** `notions: ["{markers} stitch markers"]`

**Instead.** `notions: [8 stitch markers]`, or tell it in the text: `You need {markers} markers.`""",
)

UNSAFE_REFERENCE = Rule(
    "unsafe-reference",
    Level.ERROR,
    """A picture from the network or from outside `content/media/`, or a link that is no web address and no page.

**Why it matters.** A page must not fetch anything behind the reader's back, and must work from disk.

**Example.** `![Hat](https://elsewhere.example/hat.png)`

**Instead.** Put the picture into `content/media/` and write `![Hat](hat.png)`.""",
)

MISSING_FILE = Rule(
    "missing-file",
    Level.ERROR,
    """A picture, table, technique or page that is named but not there.

**Why it matters.** The page would show a gap where the reader needs it.

**Example.** `picture: {file: hta.svg, alt: A hat}`

**Instead.** `picture: {file: hat.svg, alt: A hat}`""",
)

UNSAFE_PICTURE = Rule(
    "unsafe-picture",
    Level.ERROR,
    """An SVG picture with a script, an event handler or a reference to something outside it; a file that is no picture.

**Why it matters.** Opened on its own in a browser it would run code, or fetch something, on the reader's machine.

**Example.** `<svg onload="…">`

**Instead.** Save the drawing again as a plain SVG without scripts and with its images embedded.""",
)

MISSING_ALT = Rule(
    "missing-alt",
    Level.WARNING,
    """A picture without the words that stand for it.

**Why it matters.** A reader who knits by ear learns nothing from it, and the PDF is not accessible.

**Example.** `![](hat.svg)`

**Instead.** `![The hat from the side, crown shaped in eight sections](hat.svg)`""",
)

NOT_UNDERSTOOD = Rule(
    "not-understood",
    Level.ERROR,
    """Words among the instructions that the tool does not understand.

**Why it matters.** What is not understood is not carried out, so nothing behind it would be proved; nothing is guessed.

**Example.** `Row 1: K2, flurb 3, k2.`

**Instead.** Write the row in stitches the tool knows, add your own to `content/stitches.yaml`, or declare what the
words do to the count: `Work the panel as drawn.   # declared: 72 sts`""",
)

UNREADABLE_CHART = Rule(
    "unreadable-chart",
    Level.ERROR,
    """A row of a chart, or a line of its key, that cannot be read.

**Why it matters.** The rows are written from the chart, so a cell that is guessed at would be knitted by everybody.

**Example.** `| o / ? | 3`, where the key does not say what `?` is; a row without its number.

**Instead.** `? = k2tog tbl` above the rows; the number at the right of a row worked from the right, at the left of a
wrong-side row.""",
)

READ_RULES = tuple(value for value in dict(globals()).values() if isinstance(value, Rule))
