package sets

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Clean is a text of others as one line that is safe to show and print: at
// most n characters, without control signs and without those that turn the
// direction of writing.
func Clean(text string, n int) string {
	var out strings.Builder
	space := false
	for _, r := range text {
		switch {
		case unicode.IsSpace(r):
			space = out.Len() > 0
			continue
		case r == utf8.RuneError, unicode.IsControl(r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Co, r):
			continue
		}
		if space {
			if n--; n < 1 {
				break
			}
			out.WriteByte(' ')
			space = false
		}
		if n--; n < 0 {
			break
		}
		out.WriteRune(r)
	}
	return strings.TrimSpace(out.String())
}

// line is a line of working as typed, without signs that do not print.
func line(text string) string {
	clean := func(r rune) rune {
		if r == utf8.RuneError || unicode.IsControl(r) || unicode.Is(unicode.Cf, r) {
			return -1
		}
		return r
	}
	return strings.Map(clean, text)
}

// Key is what a learner's name or number is known by: its letters in lower
// case.
func Key(learner string) string { return strings.ToLower(Clean(learner, MaxLearner)) }

// isTime reports whether a text is a date, "2026-12-18", or a date with a
// time of day, "2026-12-18T16:00".
func isTime(text string) bool {
	const form = "0000-00-00T00:00"
	if len(text) != len("0000-00-00") && len(text) != len(form) {
		return false
	}
	for i := range len(text) {
		digit := text[i] >= '0' && text[i] <= '9'
		if form[i] == '0' && !digit || form[i] != '0' && text[i] != form[i] {
			return false
		}
	}
	month, day := two(text[5:]), two(text[8:])
	if month < 1 || month > 12 || day < 1 || day > daysOf(four(text), month) {
		return false
	}
	return len(text) < len(form) || two(text[11:]) < 24 && two(text[14:]) < 60
}

func two(text string) int { return int(text[0]-'0')*10 + int(text[1]-'0') }

func four(text string) int { return two(text)*100 + two(text[2:]) }

func daysOf(year, month int) int {
	switch month {
	case 4, 6, 9, 11:
		return 30
	case 2:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	}
	return 31
}

// minutesOf counts the minutes of a time since the year 0, so that two can be
// held against each other; a date alone is its beginning.
func minutesOf(text string) int {
	year, month := four(text), two(text[5:])
	days := year*365 + (year+3)/4 - (year+99)/100 + (year+399)/400
	for m := 1; m < month; m++ {
		days += daysOf(year, m)
	}
	n := (days + two(text[8:]) - 1) * 24 * 60
	if len(text) > 11 {
		n += two(text[11:])*60 + two(text[14:])
	}
	return n
}

// after reports whether a time is past a closing date; a date alone closes at
// the end of its day.
func after(written, closes string) bool {
	return closes != "" && written[:min(len(written), len(closes))] > closes
}
