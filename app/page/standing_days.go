package page

import (
	"fmt"
	"time"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// weeks is how many weeks the calendar shows.
const weeks = 5

// calendar is the days of work: lines marked on each, week by week.
func (s *standing) calendar() app.UI {
	days := s.view.State.Days
	monday := s.view.Today - (int(dateOf(s.view.Today).Weekday())+6)%7
	var rows []app.UI
	most, worked, lines := 1, 0, 0
	for d := monday - 7*(weeks-1); d <= s.view.Today; d++ {
		most = max(most, days[d])
		lines += days[d]
		if days[d] > 0 {
			worked++
		}
	}
	for w := weeks - 1; w >= 0; w-- {
		var cells []app.UI
		for i := range 7 {
			cells = append(cells, s.dayCell(monday-7*w+i, most))
		}
		rows = append(rows, app.Tr().Body(cells...))
	}
	var head []app.UI
	for _, d := range []string{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"} {
		head = append(head, app.Th().Scope("col").Text(d))
	}
	return app.Section().Class("days").Aria("label", "Days of work").Body(
		app.H2().Text("Days of work"),
		app.P().ID("days-sum").Text(fmt.Sprintf("%s marked on %s in these five weeks.", counted(lines, "line", "lines"), counted(worked, "day", "days"))),
		app.Table().Body(app.THead().Body(app.Tr().Body(head...)), app.TBody().Body(rows...)),
	)
}

// dayCell is one day: its date and, where there was work, the lines marked.
func (s *standing) dayCell(day, most int) app.UI {
	n := s.view.State.Days[day]
	date := dateOf(day)
	text := date.Format("2")
	if date.Day() == 1 {
		text = date.Format("2 Jan")
	}
	shade := 0
	if n > 0 {
		shade = 1 + 3*(n-1)/most
	}
	cell := app.Td().DataSet("shade", shade).DataSet("today", day == s.view.Today).Body(
		app.Time().DateTime(date.Format(time.DateOnly)).Text(text),
		app.Span().Class("lines-marked").Text(linesText(n)),
	)
	if day > s.view.Today {
		return cell.DataSet("ahead", true)
	}
	return cell
}

func linesText(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprint(n)
}
