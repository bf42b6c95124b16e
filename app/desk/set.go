package desk

import (
	"fmt"
	"io"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"

	"riserwork/problems"
	"riserwork/problems/devices"
	"riserwork/problems/sets"
)

// Set makes a set from flags and prints its link, or the set as JSON.
func Set(args []string, out io.Writer) error {
	fs := flags("set")
	s := &sets.Set{}
	var wanted, chapters list
	fs.StringVar(&s.Title, "title", "Problems", "title of the set")
	fs.StringVar(&s.Note, "note", "", "a note to the learners")
	fs.StringVar(&s.Amends, "amends", "", "local amendments, in your words")
	fs.Var(&wanted, "skill", "ID[:KIND[:COUNT]]; may be repeated")
	var reasons list
	fs.Var(&reasons, "reason", "KIND of a question of devices and reasons, such as \"which is missing\"; may be repeated")
	fs.Var(&chapters, "chapter", "NUMBER:COUNT[:KIND]; may be repeated")
	year := fs.Int("year", 0, "skills of a chapter up to this year; 0: any")
	units := fs.String("units", "", "us, metric or mixed")
	code := fs.String("code", "", "id of the code profile")
	alone := fs.String("alone", "values", "what an answer earns that stands alone: values, all or none")
	help := fs.String("help", string(sets.AllHelp), "help allowed: all, marks or none")
	fs.IntVar(&s.Minutes, "minutes", 0, "time allowed")
	fs.IntVar(&s.Pass, "pass", 0, "pass mark in percent")
	fs.StringVar(&s.Closes, "closes", "", "closing date, such as 2026-12-18 or 2026-12-18T16:00")
	fs.BoolVar(&s.Own, "own", false, "numbers of his own for each learner")
	number := fs.Uint64("number", 0, "what the numbers are drawn from; 0: any")
	base := fs.String("base", "", "address of the site, before /do")
	asJSON := fs.Bool("json", false, "print JSON")
	if err := fs.Parse(args); err != nil {
		return err
	}
	var err error
	if s.House, err = house(*units, *code); err != nil {
		return err
	}
	s.House.Alone, _ = problems.AloneByWord(*alone)
	s.Help = sets.Help(*help)
	if s.Number = uint32(*number); *number == 0 {
		s.Number = rand.Uint32()
	}
	if err := fill(s, wanted, chapters, *year); err != nil {
		return err
	}
	for _, word := range reasons {
		if !slices.Contains(devices.Kinds, devices.Kind(word)) {
			return fmt.Errorf("a kind of question was %q, expected one of %q", word, devices.Kinds)
		}
		s.Items = append(s.Items, sets.QuestionOf(devices.Kind(word)))
	}
	if err := s.Check(); err != nil {
		return err
	}
	if *asJSON {
		return printJSON(out, s)
	}
	_, err = fmt.Fprintln(out, strings.TrimSuffix(*base, "/")+"/do#"+s.Link())
	return err
}

// fill adds the problems that the flags name.
func fill(s *sets.Set, wanted, chapters []string, year int) error {
	for _, text := range wanted {
		id, rest, _ := strings.Cut(text, ":")
		kind, count, _ := strings.Cut(rest, ":")
		skill, err := find(id)
		if err != nil {
			return err
		}
		n, err := countOf(text, count, "1")
		if err != nil {
			return err
		}
		for range n {
			s.Items = append(s.Items, sets.ItemOf(skill, kindOf(kind)))
		}
	}
	for _, text := range chapters {
		chapter, rest, _ := strings.Cut(text, ":")
		count, kind, _ := strings.Cut(rest, ":")
		n, err := countOf(text, count, "")
		if err != nil {
			return err
		}
		number, err := strconv.Atoi(chapter)
		if err != nil {
			return fmt.Errorf("a chapter was %q, expected NUMBER:COUNT, such as 5:4", text)
		}
		if err := s.Draw(sets.Blueprint{Chapter: number, Year: year, Count: n, Kind: kindOf(kind)}); err != nil {
			return err
		}
	}
	return nil
}

func kindOf(word string) sets.Kind {
	if word == "" {
		return sets.Guided
	}
	return sets.Kind(word)
}

func countOf(whole, text, usual string) (int, error) {
	if text == "" {
		text = usual
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > sets.MaxItems {
		return 0, fmt.Errorf("%q has %q for its number of problems, expected 1 to %d", whole, text, sets.MaxItems)
	}
	return n, nil
}
