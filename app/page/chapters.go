package page

import (
	"strconv"

	"riserwork/problems"
	"riserwork/problems/skills"
)

// chapters are the titles of the chapters, the first being chapter 1.
var chapters = [...]string{
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

// chapter is the title of chapter n.
func chapter(n int) string {
	if n < 1 || n > len(chapters) {
		return "Chapter " + strconv.Itoa(n)
	}
	return chapters[n-1]
}

// skillsByChapter is the catalogue in runs of one chapter.
func skillsByChapter() [][]*problems.Skill {
	var runs [][]*problems.Skill
	for _, s := range skills.All() {
		if n := len(runs); n > 0 && runs[n-1][0].Chapter == s.Chapter {
			runs[n-1] = append(runs[n-1], s)
			continue
		}
		runs = append(runs, []*problems.Skill{s})
	}
	return runs
}
