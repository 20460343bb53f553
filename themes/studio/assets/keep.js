// Keeps what somebody knits by, to be read without a network: the page itself and the PDF of the size. Says what is kept.
"use strict";

reader.keep = async (say) => {
  if (!globalThis.offline) return;
  const links = [...document.querySelectorAll('.actions a[type="application/pdf"]')];
  const paper = links.find((link) => link.checkVisibility());
  const kept = await offline.keep([location.href, ...(paper ? [paper.href] : [])]);
  if (!kept.includes(location.href)) return say(tr("Nothing could be kept to be read without a network. Try again when there is one."));
  if (!paper) return say(tr("Kept on this device, to be read without a network: this page."));
  const parts = { pdf: paper.textContent.trim() };
  if (kept.includes(paper.href)) return say(tr("Kept on this device, to be read without a network: this page and “{pdf}”.", parts));
  return say(tr("Kept on this device, to be read without a network: this page. Not yet “{pdf}”: open it while there is one.", parts));
};
