// How the app is put on a home screen; part of the one catalogue.

export const installWords = {
  "install.hint": "Install at home, before you lose signal",
  "install.dismiss": "Do not show this again",
  "install.button": "Install",
  "install.ios.1": "Open this page in the phone’s own browser and tap the share button.",
  "install.ios.2": "Choose “Add to Home Screen”.",
  "install.ios.3": "Open Rimside from the home screen once while you still have signal.",
  "install.ios.storage": "On iOS the installed app keeps its own storage: what you typed in the browser is not in it. So install first, then type.",
  "install.menu.1": "Open the browser’s menu.",
  "install.menu.2": "Choose “Install” or “Add to home screen”.",
  "install.menu.3": "Open Rimside from the home screen once while you still have signal.",
  "install.done": "This is the installed app. It opens without signal.",
} as const;
