"""The sentences that change no count, as patterns of their words: what is cut, woven in, measured, or only noted."""

_STS = "(?:sts?|stitch|stitches)"
# Where stitches lie on needles changes no count.
DIVIDED = (
    rf"(?:divide|distribute|arrange|spread)(?: (?:the|all|these|your))*(?: {_STS})?(?: evenly)?"
    r" (?:over|onto|on|across|among|between|to)(?: (?:your|the))?(?: #)?(?: (?:dpns?|(?:double-pointed )?needles?))"
)
NUMBERS = "#(?: (?:and|to|-|,|through|&) #)*"

SILENT = (
    DIVIDED,
    rf"cast on any number of {_STS} (?:that can be divided|divisible) by #(?: , with # {_STS} over)?",
    r"cast on # (?:sts|stitches) for each pattern",
    r"(?:work|knit|continue|cont) in [a-z' -]+ ,? ?as follows(?: :)?",
    r"all (?:rows|rnds|rounds) are (?:the same|alike)",
    r"(?:cut|break) (?:the )?yarn.*",
    r"(?:fasten off|weave in|sew|block|steam|wash|press).*",
    r"(?:change|switch) to .*",
    r"(?:do not|don't) (?:join|turn|break|cut).*",
    r"turn(?: work| the work)?",
    r"(?:join|rejoin|attach) (?:the )?(?:new )?yarn.*",
    r"pull (?:the )?(?:tail|yarn|thread|it).*",
    r"(?:leave|leaving) (?:a|the|yarn) .*",
    r"(?:mark|note|see|read|remember|make sure|check) .*",
    r"(?:the )?(?:piece|brim|body|cuff|hat|thumb|scarf|cloth|edge|work) (?:now )?measures .*",
    r"(?:multiple|panel) of .*",
    rf"(?:(?:these|the|last|above) )*(?:# )?(?:rows?|rnds?|rounds?)(?: {NUMBERS})? (?:form|set|establish)(?:s|es)? .*",
    r"worked (?:flat|in the round|in rounds|in rows).*",
    r"(?:continue|cont) (?:in|to work in) (?:the )?(?:rounds?|rnds?|rows?)",
)
