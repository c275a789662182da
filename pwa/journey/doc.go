// Package journey holds the browser tests: they build the real binary, start it, and use the app as a person would, by
// the roles and names that are seen or read out. There is nothing here but tests and their helpers.
//
// They need Chromium and a built pwa/dist, and axe-core under pwa/node_modules for the accessibility checks. What is
// missing is said and skipped; with CI set it is a failure. RIMSIDE_SHOTS=DIR keeps screenshots, and
// RIMSIDE_CHROMIUM=PATH names the browser.
package journey
