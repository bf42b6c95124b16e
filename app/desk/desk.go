// Package desk holds the commands that print problems and mark working, for
// instructors, scripts and checks. Their JSON is described in the README.
package desk

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"strings"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// skillRow is one skill of the list.
type skillRow struct {
	ID      string      `json:"id"`
	Title   string      `json:"title"`
	Chapter int         `json:"chapter"`
	Year    int         `json:"year"`
	Kind    string      `json:"kind"`
	Version int         `json:"version"`
	Givens  []string    `json:"givens"`
	Rules   []ruleRow   `json:"rules"`
	Sources []sourceRow `json:"sources"`
	Caution []string    `json:"cautions,omitempty"`
}

type ruleRow struct {
	Name    string   `json:"name"`
	Formula string   `json:"formula"`
	Slips   []string `json:"slips"`
}

type sourceRow struct {
	Says       string `json:"says"`
	Confidence string `json:"confidence"`
}

// Skills lists the catalogue, as text or as one JSON array.
func Skills(args []string, out io.Writer) error {
	fs := flags("skills")
	asJSON := fs.Bool("json", false, "print JSON")
	if err := fs.Parse(args); err != nil {
		return err
	}
	rows := []skillRow{}
	for _, s := range skills.All() {
		rows = append(rows, row(s))
	}
	if *asJSON {
		return printJSON(out, rows)
	}
	for _, r := range rows {
		slips := 0
		for _, rule := range r.Rules {
			slips += len(rule.Slips)
		}
		fmt.Fprintf(out, "%d  %-26s %s (year %d, %d steps, %d slips)\n", r.Chapter, r.ID, r.Title, r.Year, len(r.Rules), slips)
	}
	return nil
}

func row(s *problems.Skill) skillRow {
	r := skillRow{ID: s.ID, Title: s.Title, Chapter: s.Chapter, Year: s.Year, Kind: string(s.Kind), Version: s.Version, Caution: s.Cautions}
	for _, g := range s.Givens {
		r.Givens = append(r.Givens, g.Name)
	}
	for _, rule := range s.Rules {
		rr := ruleRow{Name: rule.Name, Formula: rule.Formula, Slips: []string{}}
		for _, slip := range rule.Slips {
			rr.Slips = append(rr.Slips, slip.ID)
		}
		r.Rules = append(r.Rules, rr)
	}
	for _, src := range s.Sources {
		r.Sources = append(r.Sources, sourceRow{src.Says, string(src.Confidence)})
	}
	return r
}

func flags(name string) *flag.FlagSet {
	fs := flag.NewFlagSet(name, flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	return fs
}

func printJSON(out io.Writer, v any) error {
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}

// house reads the units and the code of a call.
func house(system, code string) (problems.House, error) {
	h := problems.Defaults
	if system != "" {
		h.System = unit.System(system)
	}
	switch h.System {
	case unit.US, unit.Metric, unit.Mixed:
	default:
		return h, fmt.Errorf("units were %q, expected us, metric or mixed", system)
	}
	if code != "" {
		h.Code = code
	}
	if _, ok := solver.ProfileByID(h.Code); !ok {
		return h, fmt.Errorf("code was %q, expected one of %s", code, codeNames())
	}
	return h, nil
}

func codeNames() string {
	var ids []string
	for _, p := range solver.Profiles {
		ids = append(ids, p.ID)
	}
	return strings.Join(ids, ", ")
}

// find is the skill of an id, or a sentence.
func find(id string) (*problems.Skill, error) {
	if id == "" {
		return nil, fmt.Errorf("no skill was named, expected an id such as floor-pressure")
	}
	s, ok := skills.ByID(id)
	if !ok {
		return nil, fmt.Errorf("skill was %q, expected an id from the list that `skills` prints", id)
	}
	return s, nil
}
