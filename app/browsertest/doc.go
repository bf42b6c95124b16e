// Package browsertest tests the built page in a real browser. Its tests need
// Chromium and the build tag browser; `make test` gives them both. CHROMIUM
// names another browser program, and SHOTS a folder for the pictures that
// tests take.
package browsertest
