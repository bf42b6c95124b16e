package sets

import (
	"bytes"
	"encoding/json"
	"strconv"
	"strings"
)

// Tables are CSV as RFC 4180 has it: lines end in CR LF, a cell with a comma,
// a quote or a line end stands in quotes. A byte order mark comes first, by
// which spreadsheets know UTF-8.
const byteOrderMark = "\ufeff"

// cell is a text as a cell. A text that a spreadsheet would run as a formula
// gets an apostrophe before it, which makes it text.
func cell(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r\n|%＝＋－＠", []rune(text)[0]) {
		text = "'" + text
	}
	if strings.ContainsAny(text, ",\"\r\n;") {
		text = `"` + strings.ReplaceAll(text, `"`, `""`) + `"`
	}
	return text
}

func record(cells ...string) string { return strings.Join(cells, ",") + "\r\n" }

// CSV is the table of the class: a row a paper.
func (r *Report) CSV(s *Set) string {
	var out strings.Builder
	out.WriteString(byteOrderMark)
	head := []string{"learner", "status", "written", "marks", "of", "percent", "passed"}
	for i := range r.Problems {
		head = append(head, "problem "+strconv.Itoa(i+1))
	}
	out.WriteString(record(append(head, "shown lines", "slips", "by hand", "note", "file")...))
	for i := range r.Papers {
		out.WriteString(r.row(s, &r.Papers[i]))
	}
	return out.String()
}

func (r *Report) row(s *Set, p *Paper) string {
	cells := []string{cell(p.Learner), string(p.Status), p.Written}
	if len(p.Items) == 0 {
		cells = append(cells, make([]string, 4+len(r.Problems)+3)...)
		return record(append(cells, cell(p.Says), cell(p.Source))...)
	}
	cells = append(cells, strconv.Itoa(p.Marks), strconv.Itoa(p.Of), strconv.Itoa(p.Percent()), passed(s, p))
	shown := 0
	var slips, byHand []string
	for i := range p.Items {
		m := &p.Items[i]
		cells = append(cells, strconv.Itoa(m.Marks))
		shown += m.Shown
		for _, f := range m.Faults {
			if f.Slip != "" {
				slips = append(slips, s.Items[i].Skill+"/"+f.Slip)
			}
		}
		if m.ByHand != "" {
			byHand = append(byHand, "problem "+strconv.Itoa(i+1)+": "+m.ByHand)
		}
	}
	return record(append(cells, strconv.Itoa(shown), cell(strings.Join(slips, " ")), cell(strings.Join(byHand, "; ")), cell(p.Says), cell(p.Source))...)
}

// Passed reports whether a paper reaches the pass mark of the set.
func (s *Set) Passed(p *Paper) bool { return s.Pass > 0 && p.Marks*100 >= s.Pass*p.Of }

func passed(s *Set, p *Paper) string {
	switch {
	case s.Pass == 0:
		return ""
	case s.Passed(p):
		return "yes"
	}
	return "no"
}

// Grades are two columns for a grade book: the learner and the percent, of
// the papers that count.
func (r *Report) Grades() string {
	var out strings.Builder
	out.WriteString(byteOrderMark + record("learner", "percent"))
	for i := range r.Papers[:r.Counted] {
		p := &r.Papers[i]
		out.WriteString(record(cell(p.Learner), strconv.Itoa(p.Percent())))
	}
	return out.String()
}

// JSON is the whole report as JSON.
func (r *Report) JSON() []byte {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(r); err != nil { // texts and numbers always encode
		return nil
	}
	return out.Bytes()
}
