package record

import (
	"errors"
	"fmt"
	"strings"
)

// heading is the first line of a saved file.
const heading = "riserwork record 1"

// maxFile is how many bytes of a file are read.
const maxFile = 64 << 20

// File is entries as one text, a line each, to be saved.
func File(lines []string) string {
	return heading + "\n" + strings.Join(lines, "\n") + "\n"
}

// ReadFile is the entries of a saved file, each as it stands in it. A line
// that is damaged or cut short is left out and counted; the others are kept.
func ReadFile(text string) (entries []Entry, damaged int, err error) {
	if len(text) > maxFile {
		return nil, 0, errors.New("record: the file is larger than any that is saved")
	}
	head, rest, _ := strings.Cut(strings.TrimPrefix(text, "\ufeff"), "\n")
	if strings.TrimSpace(head) != heading {
		return nil, 0, fmt.Errorf("record: the file begins with %q, expected %q", clip(head), heading)
	}
	entries, damaged = ReadLines(rest)
	return entries, damaged, nil
}

// ReadLines is the entries of a text with one entry a line, and how many lines
// could not be read.
func ReadLines(text string) (entries []Entry, damaged int) {
	for line := range strings.SplitSeq(text, "\n") {
		line = strings.TrimRight(line, "\r")
		if line == "" {
			continue
		}
		e, err := Read(line)
		if err != nil {
			damaged++
			continue
		}
		entries = append(entries, e)
	}
	return entries, damaged
}

// clip keeps a text of others short where it is shown.
func clip(text string) string {
	if r := []rune(text); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return text
}
