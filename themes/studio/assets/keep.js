// Keeps what somebody knits by, to be read without a network: the page itself and the PDF of the size. Says what is kept.
"use strict";

reader.keep = async (size, say) => {
  if (!globalThis.offline) return;
  const links = [...document.querySelectorAll('.actions a[type="application/pdf"]')];
  const paper = links.find((link) => link.checkVisibility());
  const kept = await offline.keep([location.href, ...(paper ? [paper.href] : [])]);
  if (!kept.includes(location.href)) return say(tr("This page could not be kept to be read without a network. Try again when there is one."));
  if (!paper) return say(tr("This page is kept on this device, to be read without a network."));
  if (!kept.includes(paper.href)) {
    return say(tr("This page is kept on this device, to be read without a network. Its PDF could not be fetched: open it once while there is a network."));
  }
  return say(
    size && paper.closest(".zo")
      ? tr("This page and the PDF of size {size} are kept on this device, to be read without a network.", { size })
      : tr("This page and its PDF are kept on this device, to be read without a network."),
  );
};
