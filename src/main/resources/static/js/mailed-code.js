// The address in a mail carries its code behind a #, which no browser sends. It goes into the field, and out of the address.
const code = decodeURIComponent(location.hash.slice(1));

if (code) {
  document.querySelector("input[name=code]").value = code;
  history.replaceState(null, "", location.pathname + location.search);
  document.querySelector("input[name=password]").focus();
}
