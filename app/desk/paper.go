package desk

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/paper"
)

// PaperJSON is a whole-building paper with its solution and mark scheme.
type PaperJSON struct {
	Seed    uint64     `json:"seed"`
	Version int        `json:"version"`
	Size    string     `json:"size"`
	Units   string     `json:"units"`
	Code    string     `json:"code"`
	Says    string     `json:"says"`
	Facts   []FactJSON `json:"facts"`
	Parts   []PartJSON `json:"parts"`
	Marks   int        `json:"marks"`
}

// FactJSON is a thing known of the building.
type FactJSON struct {
	Says string `json:"says"`
	Text string `json:"text"`
}

// PartJSON is one part: the problem, the numbers that come from earlier parts,
// and what earns its marks.
type PartJSON struct {
	Part    string       `json:"part"`
	Chapter int          `json:"chapter"`
	Title   string       `json:"title"`
	From    []LinkJSON   `json:"from"`
	Problem ProblemJSON  `json:"problem"`
	Scheme  []SchemeJSON `json:"scheme"`
	Marks   int          `json:"marks"`
}

// LinkJSON says that a given is the answer of an earlier part.
type LinkJSON struct {
	Given string `json:"given"`
	Part  string `json:"part"`
	Step  string `json:"step"`
}

// SchemeJSON is one line of the mark scheme.
type SchemeJSON struct {
	Says   string `json:"says"`
	Method string `json:"method"`
	Value  string `json:"value"`
	From   string `json:"from"`
	To     string `json:"to"`
}

// Paper prints a whole-building paper with its solution and mark scheme.
func Paper(args []string, out io.Writer) error {
	fs := flags("paper")
	seed := fs.Uint64("seed", 1, "seed of the building")
	size := fs.String("size", "", "kind of building: walk-up, mid-rise, lodging or tower; empty: any")
	units := fs.String("units", "", "us, metric or mixed")
	code := fs.String("code", "", "id of the code profile")
	asJSON := fs.Bool("json", false, "print JSON")
	if err := fs.Parse(args); err != nil {
		return err
	}
	p, err := layPaper(*size, *seed, *units, *code)
	if err != nil {
		return err
	}
	view := paperJSON(p)
	if *asJSON {
		return printJSON(out, view)
	}
	printPaper(out, view)
	return nil
}

// layPaper draws the paper of a call.
func layPaper(size string, seed uint64, units, code string) (*paper.Paper, error) {
	if size != "" && !slices.Contains(paper.Sizes, paper.Size(size)) {
		return nil, fmt.Errorf("size was %q, expected one of %v", size, paper.Sizes)
	}
	h, err := house(units, code)
	if err != nil {
		return nil, err
	}
	return paper.New(paper.Size(size), seed, h)
}

func paperJSON(p *paper.Paper) PaperJSON {
	v := PaperJSON{Seed: p.Seed, Version: paper.Version, Size: string(p.Size), Units: string(p.House.System), Code: p.House.Code, Says: p.Says, Marks: p.Of()}
	for _, f := range p.Facts {
		v.Facts = append(v.Facts, FactJSON{f.Says, f.Text})
	}
	for i := range p.Parts {
		x := &p.Parts[i]
		part := PartJSON{Part: x.Name, Chapter: x.Skill.Chapter, Title: x.Skill.Title, From: []LinkJSON{}, Problem: problemJSON(x.Problem), Marks: 2 * len(x.Steps)}
		part.Problem.Ask = x.AskText(x.Problem)
		for _, l := range x.From {
			part.From = append(part.From, LinkJSON{l.Given, p.Parts[l.Part].Name, p.Parts[l.Part].Steps[l.Step].Name})
		}
		for _, s := range marking.Scheme(x.Problem) {
			part.Scheme = append(part.Scheme, SchemeJSON{s.Says, s.Method, s.Value, s.From, s.To})
		}
		v.Parts = append(v.Parts, part)
	}
	return v
}

func printPaper(out io.Writer, v PaperJSON) {
	fmt.Fprintf(out, "%s\n\n", v.Says)
	for _, f := range v.Facts {
		fmt.Fprintf(out, "  %-52s %s\n", f.Says, f.Text)
	}
	for i, x := range v.Parts {
		fmt.Fprintf(out, "\nPart %d, chapter %d: %s (%d marks)\n", i+1, x.Chapter, x.Title, x.Marks)
		for _, l := range x.From {
			fmt.Fprintf(out, "  %s is the answer of part %d\n", l.Given, 1+slices.IndexFunc(v.Parts, func(o PartJSON) bool { return o.Part == l.Part }))
		}
		printProblem(out, x.Problem)
		for k, s := range x.Scheme {
			fmt.Fprintf(out, "  line %d: 1 for %s, 1 for %s", k+1, s.Method, s.Value)
			if s.From != s.To {
				fmt.Fprintf(out, " (%s to %s)", s.From, s.To)
			}
			fmt.Fprintln(out)
		}
	}
	fmt.Fprintf(out, "\n%d marks. A part that goes on rightly with a wrong number of an earlier part loses nothing more.\n", v.Marks)
}

// paperRequest is a paper to be marked: its lines by the name of the part.
type paperRequest struct {
	Size  string              `json:"size"`
	Seed  uint64              `json:"seed"`
	Lines map[string][]string `json:"lines"`
}

// PaperMarkJSON is what is written for a marked paper.
type PaperMarkJSON struct {
	Parts []PartMarkJSON `json:"parts"`
	Marks int            `json:"marks"`
	Of    int            `json:"of"`
}

// PartMarkJSON is what was found on one part.
type PartMarkJSON struct {
	Part    string `json:"part"`
	Through bool   `json:"through"`           // on a wrong number of an earlier part
	Blocked string `json:"blocked,omitempty"` // why that number was not carried on
	MarkJSON
}

// markPaper marks the lines of a whole paper.
func markPaper(q *paperRequest, units, code string, alone problems.Alone) (*PaperMarkJSON, error) {
	p, err := layPaper(q.Size, q.Seed, units, code)
	if err != nil {
		return nil, err
	}
	p.House.Alone = alone
	for i := range p.Parts {
		p.Parts[i].House.Alone = alone
	}
	work := make([][]string, len(p.Parts))
	var strangers []string
	for name, lines := range q.Lines {
		i := p.Index(name)
		if i < 0 {
			strangers = append(strangers, name)
			continue
		}
		work[i] = lines
	}
	if len(strangers) > 0 {
		slices.Sort(strangers)
		return nil, fmt.Errorf("the paper has no part %s, expected names that `paper` prints", strings.Join(strangers, ", "))
	}
	m := p.Mark(work, paper.Lines)
	v := &PaperMarkJSON{Marks: m.Marks, Of: m.Of}
	for i := range m.Parts {
		r := &m.Parts[i]
		v.Parts = append(v.Parts, PartMarkJSON{p.Parts[i].Name, r.Through, r.Blocked, *toJSON(r.Result)})
	}
	return v, nil
}
