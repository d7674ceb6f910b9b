// Sets what the drawing shows.
"use strict";

(() => {
  // Changes elements as the first bytes of a buffer say: for each change the number of
  // the element, the name of an attribute, "" for the text, and its value, "" to take it
  // away, each ended by the control character 1F.
  const utf8 = new TextDecoder();

  function paint(elements, buffer, length) {
    const parts = utf8.decode(buffer.subarray(0, length)).split("\x1f");
    for (let i = 0; i + 2 < parts.length; i += 3) {
      change(elements[parts[i]], parts[i + 1], parts[i + 2]);
    }
  }

  function change(element, name, value) {
    if (name === "") {
      element.textContent = value;
    } else if (name === "value") { // of a slider, as a hand would set it
      element.value = value;
    } else if (value === "") {
      element.removeAttribute(name);
    } else {
      element.setAttribute(name, value);
    }
  }

  toewright.paint = paint;

  // Opens a dialog over the window, and what is in it over the whole screen where the browser
  // lets it. To leave the screen is to leave the dialog.
  toewright.cover = (id) => {
    const dialog = document.getElementById(id);
    const box = dialog.firstElementChild;
    dialog.showModal();
    box.addEventListener("fullscreenchange", () => document.fullscreenElement || dialog.close());
    if (box.requestFullscreen && navigator.userActivation?.isActive !== false) {
      box.requestFullscreen().catch(() => {});
    }
  };
})();
