package skills

import (
	"strconv"

	"riserwork/problems"
)

// Chapters are the titles of the chapters, that of chapter 1 first.
var Chapters = [...]string{
	"Head and pressure",
	"Where the street pressure runs out",
	"Demand and pipe sizing",
	"Booster",
	"Zones and reducing valves",
	"Making hot water",
	"Recirculation",
	"Surge, movement, restraint, corrosion",
	"The whole building",
	"Devices",
	"Fault finding",
}

// ChapterTitle is the title of chapter n.
func ChapterTitle(n int) string {
	if n < 1 || n > len(Chapters) {
		return "Chapter " + strconv.Itoa(n)
	}
	return Chapters[n-1]
}

// ByChapter is the catalogue in runs of one chapter.
func ByChapter() [][]*problems.Skill {
	var runs [][]*problems.Skill
	for _, s := range All() {
		if n := len(runs); n > 0 && runs[n-1][0].Chapter == s.Chapter {
			runs[n-1] = append(runs[n-1], s)
			continue
		}
		runs = append(runs, []*problems.Skill{s})
	}
	return runs
}
