// Package page is what the apprentice sees: the start page, the page on which
// a problem is worked, and the house rules.
//
// Components hold no arithmetic: they ask packages problems and marking and
// show what they say. What was typed is kept as typed. What is saved lives in
// the browser's local storage under a version; package page reads it back
// with care, since anybody may have changed it.
package page
