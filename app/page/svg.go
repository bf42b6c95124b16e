package page

import (
	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
)

// svg is a drawn element.
func svg(n draw.Node) app.UI { return dressed(n, "img", nil) }

// dressed is a drawn element, with what dress gives to each part that has a
// key. Its role is "img" where it is one picture to those who listen, "group"
// where its parts can be tabbed to. The namespace stands on each element, since
// none is handed down.
func dressed(n draw.Node, role string, dress func(key string, e app.HTMLElem)) app.UI {
	e := app.Elem(n.Tag).XMLNS(draw.Namespace)
	for _, a := range n.Attrs {
		switch {
		case a.Name == "xmlns":
		case a.Name == "role":
			e.Attr("role", role)
		default:
			e.Attr(a.Name, a.Value)
		}
		if a.Name == "data-key" && dress != nil {
			dress(a.Value, e)
		}
	}
	if n.Text != "" {
		return e.Text(n.Text)
	}
	kids := make([]app.UI, len(n.Kids))
	for i, k := range n.Kids {
		kids[i] = dressed(k, role, dress)
	}
	return e.Body(kids...)
}

// table is the twin of a drawing in rows; the first is the heading.
func table(caption string, rows [][]string) app.UI {
	if len(rows) == 0 {
		return nil
	}
	var head, body []app.UI
	for _, text := range rows[0] {
		head = append(head, app.Th().Scope("col").Text(text))
	}
	for _, row := range rows[1:] {
		var cells []app.UI
		for i, text := range row {
			if i == 0 {
				cells = append(cells, app.Th().Scope("row").Text(text))
				continue
			}
			cells = append(cells, app.Td().Text(text))
		}
		body = append(body, app.Tr().Body(cells...))
	}
	return app.Div().Class("table").TabIndex(0).Attr("role", "region").Aria("label", caption).Body(app.Table().Body(
		app.Caption().Class("unseen").Text(caption),
		app.THead().Body(app.Tr().Body(head...)),
		app.TBody().Body(body...),
	))
}
