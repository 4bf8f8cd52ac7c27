// Shows the button that prints the page. Without this module the browser's own menu prints it.
for (const button of document.querySelectorAll("button[data-print]")) {
  button.hidden = false;
  button.addEventListener("click", () => print());
}
