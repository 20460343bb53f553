"""In: nothing. Out: what all tests share, as pytest finds it.

Nothing of it skips: where a tool is missing the test fails and says how to get it.
"""

from hypothesis import settings

# A busy machine is slow, not wrong.
settings.register_profile("suite", deadline=None)
settings.load_profile("suite")

pytest_plugins = ["tests.shared.log", "tests.shared.browser", "tests.shared.checkers", "tests.shared.demo"]
