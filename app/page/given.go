package page

// all is more lines than any problem has.
const all = maxLines

// give puts the worked lines at the head of the sheet, as many as are to be
// shown; lines that are named are the only ones that can be.
func (b *bench) give() {
	if b.sheet.Kind != blanks {
		b.sheet.Given = 0
	}
	b.sheet.Given = min(max(b.sheet.Given, 0), len(b.sheet.Lines))
	if b.sheet.Given == 0 {
		return
	}
	for i, text := range b.p.Written()[:b.sheet.Given] {
		b.sheet.Lines[i] = entry{Text: text, Marked: true}
	}
}

// isGiven reports whether line i is shown worked.
func (b *bench) isGiven(i int) bool { return i < b.sheet.Given }

// isExample reports whether every line is shown: there is nothing to write.
func (b *bench) isExample() bool { return b.sheet.Given > 0 && b.sheet.Given == len(b.sheet.Lines) }

// marks are the marks of the lines that were left to the learner: got, and to
// be had.
func (b *bench) marks() (got, of int) {
	const aLine = 2 // one for its method, one for its value
	given := aLine * b.sheet.Given
	return max(b.result.Marks-given, 0), b.result.Of - given
}

// stepNames are the names of the lines.
func (b *bench) stepNames() []string {
	names := make([]string, len(b.p.Steps))
	for i := range b.p.Steps {
		names[i] = b.p.Steps[i].Name
	}
	return names
}
