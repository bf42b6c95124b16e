package page

import (
	"riserwork/problems"
	"riserwork/problems/skills"
)

// chapters are the titles of the chapters.
var chapters = skills.Chapters

func chapter(n int) string { return skills.ChapterTitle(n) }

func skillsByChapter() [][]*problems.Skill { return skills.ByChapter() }
