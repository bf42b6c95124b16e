// Package record is the learner's record: a log of marked lines and sheets,
// and what follows from it, which skills hold, which are due and which traps
// still catch.
//
// The log is only ever added to. Everything else is worked out from it by
// [Derive], so that two devices with the same entries come to the same state
// in whichever order the entries reached them. Nothing here knows a browser
// or reads a clock; times come with the entries.
package record
