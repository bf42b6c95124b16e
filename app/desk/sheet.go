package desk

import (
	"bufio"
	"fmt"
	"html"
	"io"
	"os"
	"strings"

	"riserwork/app/draw"
	"riserwork/problems/marking"
	"riserwork/problems/sets"
)

// Sheet prints a set as a page of HTML to print: a sheet a learner with room
// for the working, or the answer key.
func Sheet(args []string, out io.Writer) error {
	fs := flags("sheet")
	link := fs.String("set", "", "link of the set")
	file := fs.String("learners", "", "file with a name or number a line")
	paper := fs.String("paper", "letter", "letter or a4")
	key := fs.Bool("key", false, "print the answer key in place of the sheets")
	var names list
	fs.Var(&names, "learner", "a name or number; may be repeated")
	if err := fs.Parse(args); err != nil {
		return err
	}
	s, err := sets.ReadAddress(*link)
	if err != nil {
		return err
	}
	if *paper != "letter" && *paper != "a4" {
		return fmt.Errorf("the paper was %q, expected letter or a4", *paper)
	}
	if names, err = learners(names, *file, s); err != nil {
		return err
	}
	w := bufio.NewWriter(out)
	p := &printer{set: s, link: s.Link(), address: *link, w: w}
	if err := p.all(names, *paper, *key); err != nil {
		return err
	}
	return w.Flush()
}

// maxNames bounds a list of learners.
const maxNames = 10_000

func learners(names list, file string, s *sets.Set) (list, error) {
	if file != "" {
		raw, err := os.ReadFile(file)
		if err != nil {
			return nil, fmt.Errorf("the list of learners could not be read: %w", err)
		}
		for l := range strings.Lines(string(raw)) {
			if name := sets.Clean(l, sets.MaxLearner); name != "" {
				names = append(names, name)
			}
		}
	}
	if len(names) > maxNames {
		return nil, fmt.Errorf("the list has %d learners, and at most %d are expected", len(names), maxNames)
	}
	if len(names) > 0 {
		return names, nil
	}
	if s.Own {
		return nil, fmt.Errorf("each learner has numbers of his own in this set, so name them with -learner or -learners")
	}
	return list{""}, nil
}

// printer writes sheets or a key.
type printer struct {
	set           *sets.Set
	link, address string
	w             *bufio.Writer
}

func (p *printer) all(names []string, paper string, key bool) error {
	fmt.Fprintf(p.w, "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>%s</title>\n<style>@page { size: %s; margin: 14mm 15mm 16mm }\n%s</style></head><body>\n", html.EscapeString(p.set.Title), paper, printStyle)
	if key && !p.set.Own {
		names = names[:1]
	}
	for _, name := range names {
		if err := p.one(name, key); err != nil {
			return err
		}
	}
	_, err := p.w.WriteString("</body></html>\n")
	return err
}

func (p *printer) one(name string, key bool) error {
	p.write(`<section class="sheet">`)
	p.head(name, key)
	for i := range p.set.Items {
		t, err := p.set.Task(i, name)
		if err != nil {
			return err
		}
		p.write(`<article>`)
		p.task(i, &t, key)
		switch {
		case t.Question != nil:
			p.question(t.Question, key)
		case key:
			p.key(&t)
		default:
			p.room(&t)
		}
		p.write(`</article>`)
	}
	p.write(`<footer>A study aid, not a design tool. Local code, the authority and a licensed plumber or engineer decide.</footer></section>` + "\n")
	return nil
}

func (p *printer) write(parts ...string) {
	for _, s := range parts {
		p.w.WriteString(s)
	}
}

// el writes an element around a text.
func (p *printer) el(tag, class, text string) {
	if text == "" {
		return
	}
	p.write("<", tag, ` class="`, class, `">`, html.EscapeString(text), "</", tag, ">")
}

func (p *printer) head(name string, key bool) {
	p.write(`<header>`)
	if code, ok := draw.QR(p.address, "the set as a QR code"); ok && !key {
		p.write(code.SVG())
	}
	title := p.set.Title
	if key {
		title += ": answer key"
	}
	p.el("h1", "title", title)
	if key {
		p.el("p", "name", name)
	} else {
		p.write(`<p class="name">Name <b>`, html.EscapeString(name), `</b><span class="rule"></span></p>`)
	}
	p.el("p", "facts", facts(p.set))
	p.el("p", "note", p.set.Note)
	if p.set.Amends != "" {
		p.el("p", "note", "Local amendments: "+p.set.Amends)
	}
	p.el("p", "code", "Set "+p.link)
	p.write(`</header>`)
}

// facts are the terms of a set in a line.
func facts(s *sets.Set) string {
	list := []string{fmt.Sprintf("%d problems", len(s.Items)), s.House.Profile().Name + ", " + s.House.Profile().Edition}
	if s.Minutes > 0 {
		list = append(list, fmt.Sprintf("%d minutes", s.Minutes))
	}
	if s.Pass > 0 {
		list = append(list, fmt.Sprintf("pass mark %d %%", s.Pass))
	}
	if s.Closes != "" {
		list = append(list, "closes "+strings.Replace(s.Closes, "T", " at ", 1))
	}
	return strings.Join(list, " · ")
}

func (p *printer) task(i int, t *sets.Task, key bool) {
	p.write(`<h2>`, fmt.Sprint(i+1), `. `, html.EscapeString(t.Title()), `<span class="worth">`, marksText(t.Worth()), `</span></h2>`)
	p.el("p", "ask", t.AskText())
	if t.Question != nil {
		return
	}
	p.write(`<div class="side">`)
	if scene := draw.Problem(t.Problem, key); scene != nil {
		p.write(`<figure>`, scene.SVG(), `</figure>`)
	}
	p.write(`<div><table class="told">`)
	for _, told := range t.Told {
		p.write(`<tr><td>`, html.EscapeString(t.Fill(told.Says, t.Env())), `</td><td>`, html.EscapeString(told.Text), `</td></tr>`)
	}
	p.write(`</table>`)
	for _, c := range t.Skill.Cautions {
		p.el("p", "caution", "⚠ "+t.Fill(c, t.Env()))
	}
	p.write(`</div></div>`)
}

// freeLines is the room for lines of one's own.
const freeLines = 8

// room is where the working is written.
func (p *printer) room(t *sets.Task) {
	switch t.Kind {
	case sets.Choice:
		p.write(`<ul class="choices">`)
		for _, o := range t.Options {
			p.el("li", "", "☐ "+o.Text)
		}
		p.write(`</ul>`)
	case sets.Mistake:
		p.el("p", "", "One line of this working is wrong. Mark the first wrong line and write it rightly.")
		p.lines(t.Planted.Lines)
		p.ruled("Line ____", 1)
	case sets.Free:
		p.ruled("", freeLines)
	default:
		for i := range t.Steps {
			p.ruled(fmt.Sprintf("%d. %s", i+1, t.Label(i)), 1)
		}
	}
}

func (p *printer) lines(list []string) {
	p.write(`<ol class="given">`)
	for _, l := range list {
		p.el("li", "", l)
	}
	p.write(`</ol>`)
}

func (p *printer) ruled(label string, n int) {
	for range n {
		p.write(`<div class="ruled"><span>`, html.EscapeString(label), `</span></div>`)
	}
}

// key is the full working with the mark scheme.
func (p *printer) key(t *sets.Task) {
	if t.Kind == sets.Mistake {
		p.lines(t.Planted.Lines)
		p.el("p", "", fmt.Sprintf("Line %d is the first wrong one (%s).", t.Planted.Wrong+1, t.Planted.Slip))
	}
	if t.Kind == sets.Choice {
		for _, o := range t.Options {
			if o.Right {
				p.el("p", "", "Right: "+o.Text)
			} else if o.Slip != "" {
				p.el("p", "", o.Text+" comes from "+o.Slip)
			}
		}
	}
	scheme := marking.Scheme(t.Problem)
	p.write(`<table class="scheme"><tr><th>line</th><th>method</th><th>numbers</th><th>value</th><th>taken</th></tr>`)
	for i, l := range t.Worked() {
		s := scheme[i]
		p.write(`<tr>`)
		for _, c := range []string{l.Says, l.Symbols, l.Numbers, l.Value, s.From + " to " + s.To} {
			p.el("td", "", c)
		}
		p.write(`</tr>`)
	}
	p.write(`</table>`)
	if t.Kind == sets.Guided || t.Kind == sets.Free {
		p.el("p", "facts", "Each line has one mark for its method and one for its value; a wrong number carried on loses once.")
	}
}

func marksText(n int) string {
	if n == 1 {
		return "1 mark"
	}
	return fmt.Sprintf("%d marks", n)
}

const printStyle = `body { font: 11pt/1.4 system-ui, sans-serif; color: #000; margin: 0 auto; max-width: 18cm }
.sheet { break-after: page } .sheet:last-child { break-after: auto }
header { border-bottom: 1.5pt solid #000; margin-bottom: 8pt; overflow: hidden }
header svg { float: right; width: 3cm; height: 3cm; margin: 0 0 4pt 8pt }
h1 { font-size: 16pt; margin: 0 0 4pt } h2 { font-size: 12pt; margin: 10pt 0 2pt } .worth { float: right; font-weight: normal }
.name .rule { display: inline-block; width: 7cm; border-bottom: 0.6pt solid #000; margin-left: 6pt } p { margin: 3pt 0 }
.facts, .code, footer, .caution { font-size: 9pt } .code { word-break: break-all; font-family: monospace; font-size: 8pt }
.side { display: flex; gap: 6mm; break-inside: avoid } figure { margin: 0; flex: 0 0 7cm } figure svg { width: 7cm; max-height: 12cm }
table { border-collapse: collapse; width: 100% } td, th { text-align: left; padding: 2pt 4pt; border-bottom: 0.4pt solid #888; vertical-align: top }
.told td:last-child { white-space: nowrap; text-align: right; font-weight: bold }
.ruled { border-bottom: 0.5pt solid #555; min-height: 9.5mm; break-inside: avoid } .ruled span { font-size: 9.5pt } h2, .ask { break-after: avoid }
.choices { list-style: none; padding: 0; columns: 2 }
footer { border-top: 0.5pt solid #888; margin-top: 8pt }
`
