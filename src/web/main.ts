import { mount } from "svelte";
import "./design/base.css";
import App from "./app.svelte";
import { app } from "./data/app.svelte.js";
import { settings, showLight } from "./data/settings.svelte.js";
import { keepOffline } from "./sw/keep-offline.svelte.js";
import { speak } from "./words/index.svelte.js";

showLight();
const language = settings.all.language;
const target = document.getElementById("app");
if (target === null) throw new Error("missing #app in the page");
void speak(language).then(() => {
  mount(App, { target });
  // What the device knows is on screen before the worker is loaded.
  void app.start();
  void keepOffline();
});
