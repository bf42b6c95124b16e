package page

import (
	"fmt"
	"html"
	"strings"

	"riserwork/problems/skills"
)

// Contents is the list of skills as HTML. It stands in the page while the
// program is on its way, and its links open the skills then too.
func Contents() string {
	var b strings.Builder
	for _, run := range skills.ByChapter() {
		fmt.Fprintf(&b, "<details><summary>%d %s</summary>\n<ul>\n", run[0].Chapter, html.EscapeString(skills.ChapterTitle(run[0].Chapter)))
		for _, skill := range run {
			fmt.Fprintf(&b, "<li><a href=\"%s?skill=%s\">%s</a></li>\n", strings.TrimPrefix(workPath, "/"), skill.ID, html.EscapeString(skill.Title))
		}
		b.WriteString("</ul></details>\n")
	}
	return b.String()
}
