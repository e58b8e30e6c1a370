// The state changes a little later, as it does when a server has to answer first.
document.getElementById("out").addEventListener("click", () => {
  setTimeout(() => { document.getElementById("state").textContent = "Undertray: off"; }, 150);
});
document.getElementById("undo").addEventListener("click", () => {
  document.getElementById("state").textContent = "Undertray: on";
});
