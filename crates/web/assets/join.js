// The code stands behind the mark in the address: it is never sent in the open. The link to the
// encrypted page takes it along.

const link = document.querySelector("[data-join]");
const code = location.hash.slice(1).replace(/[^0-9A-Za-z]/g, "");
if (link && code) link.href = link.dataset.join + code;
