package desk

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"

	"riserwork/problems"
	"riserwork/problems/marking"
)

// markRequest is one line of input.
type markRequest struct {
	Skill  string            `json:"skill"`
	Seed   uint64            `json:"seed"`
	Givens map[string]string `json:"givens"`
	Units  string            `json:"units"`
	Code   string            `json:"code"`
	Lines  []string          `json:"lines"`
	Paper  *paperRequest     `json:"paper"` // a whole-building paper in place of one problem
}

// MarkJSON is what is written for one line of input.
type MarkJSON struct {
	Lines []LineJSON `json:"lines"`
	Marks int        `json:"marks"`
	Of    int        `json:"of"`
	Slips []string   `json:"slips"`
	Note  string     `json:"note,omitempty"` // on the marks
}

// LineJSON is the finding on one line of working.
type LineJSON struct {
	Text    string          `json:"text"`
	Verdict marking.Verdict `json:"verdict"`
	Step    string          `json:"step"` // name of the step it answers; empty for none
	Slips   []string        `json:"slips"`
	Says    string          `json:"says"`
}

// maxRequest bounds one line of input.
const maxRequest = 1 << 20

// errBad says that some lines were refused; each has had its sentence.
var errBad = errors.New("some lines of the input were not marked")

// Mark reads JSON lines and writes for each what was found. A bad line gets
// one sentence on errs with its number, the rest are still marked, and the
// error says that there were such lines.
func Mark(args []string, in io.Reader, out, errs io.Writer) error {
	fs := flags("mark")
	fs.Bool("json", true, "write JSON, which is all there is")
	word := fs.String("alone", "values", "what an answer earns that stands alone: values, all or none")
	if err := fs.Parse(args); err != nil {
		return err
	}
	alone, ok := problems.AloneByWord(*word)
	if !ok || fs.NArg() > 0 {
		return fmt.Errorf("mark was given %q, expected -alone values, all or none, and one JSON request a line on standard input", args)
	}
	return markAll(alone, in, out, errs)
}

func markAll(alone problems.Alone, in io.Reader, out, errs io.Writer) error {
	r := bufio.NewReaderSize(in, 64<<10)
	w := bufio.NewWriter(out)
	defer w.Flush()
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	bad := false
	for number := 1; ; number++ {
		line, tooLong, err := readRequest(r)
		if err != nil && len(line) == 0 && !tooLong {
			break
		}
		if len(bytes.TrimSpace(line)) == 0 && !tooLong {
			continue
		}
		result, fault := markOne(line, tooLong, alone)
		if fault != nil {
			bad = true
			fmt.Fprintf(errs, "line %d: %s\n", number, fault)
			continue
		}
		if err := enc.Encode(result); err != nil {
			return err
		}
	}
	if bad {
		return errBad
	}
	return nil
}

// readRequest reads up to the next line end; too long a line is read to its
// end and dropped.
func readRequest(r *bufio.Reader) (line []byte, tooLong bool, err error) {
	for {
		part, err := r.ReadSlice('\n')
		if len(line)+len(part) > maxRequest {
			tooLong, line = true, nil
		}
		if !tooLong {
			line = append(line, part...)
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return line, tooLong, err
		}
	}
}

func markOne(line []byte, tooLong bool, alone problems.Alone) (any, error) {
	if tooLong {
		return nil, fmt.Errorf("the line is longer than 1 MiB, expected one request in JSON")
	}
	var q markRequest
	d := json.NewDecoder(bytes.NewReader(line))
	d.DisallowUnknownFields()
	if err := d.Decode(&q); err != nil {
		return nil, fmt.Errorf("the request is not the JSON expected, {\"skill\", \"seed\" or \"givens\", \"units\", \"code\", \"lines\"} or {\"paper\": {\"size\", \"seed\", \"lines\"}, \"units\", \"code\"}: %w", err)
	}
	if d.More() {
		return nil, fmt.Errorf("more than one request stands on the line, expected one")
	}
	if q.Paper != nil {
		return markPaper(q.Paper, q.Units, q.Code, alone)
	}
	var own []problems.Own
	for name, text := range q.Givens {
		own = append(own, problems.Own{Name: name, Text: text})
	}
	slices.SortFunc(own, func(a, b problems.Own) int { return bytes.Compare([]byte(a.Name), []byte(b.Name)) })
	p, err := lay(q.Skill, q.Seed, q.Units, q.Code, own)
	if err != nil {
		return nil, err
	}
	p.House.Alone = alone
	return toJSON(marking.Lines(p, q.Lines)), nil
}

func toJSON(r marking.Result) *MarkJSON {
	v := &MarkJSON{Lines: []LineJSON{}, Marks: r.Marks, Of: r.Of, Slips: r.Slips, Note: r.Note}
	if v.Slips == nil {
		v.Slips = []string{}
	}
	for _, f := range r.Lines {
		l := LineJSON{Text: f.Text, Verdict: f.Verdict, Slips: []string{}, Says: f.Says}
		if f.Step >= 0 {
			l.Step = r.Problem.Steps[f.Step].Name
		}
		for _, s := range f.Slips {
			l.Slips = append(l.Slips, s.ID)
		}
		v.Lines = append(v.Lines, l)
	}
	return v
}
