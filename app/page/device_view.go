package page

import (
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems"
	"riserwork/problems/devices"
)

// Render shows the question.
func (r *reasonPage) Render() app.UI {
	if r.q == nil {
		return frame("reason", r.notices, heading("Devices and reasons"), app.P().Class("fault").Text(r.fault))
	}
	kind := string(r.q.Kind)
	if r.mixed {
		kind = "mixed · " + kind
	}
	return frame("reason", r.notices,
		r.task.head(),
		app.P().Class("place").Text("Devices and reasons · "+kind),
		heading(r.q.Ask),
		r.body(),
		r.verdict(),
		app.If(r.task == nil, r.otherKinds()),
		app.P().Class("unseen").Attr("role", "status").ID("said").Text(r.said),
		r.bar(),
	)
}

// body is what is answered: a drawing, options, an order.
func (r *reasonPage) body() app.UI {
	switch r.q.Kind {
	case devices.Sequence, devices.Order:
		return r.ordering()
	case devices.Place:
		return r.drawing()
	case devices.Wrong:
		return app.Div().Class("asking").Body(
			app.P().Class("aside").Hidden(r.done).Text("Tap the device that is wrong. Where one is missing, tap what stands next to the gap."),
			r.drawing(),
			app.H2().Text("What is wrong there?"),
			r.options(),
		)
	case devices.Sound:
		return r.drawings()
	}
	return r.options()
}

// drawing is the drawing with what can be tapped in it, and its twin as a
// list of the same.
func (r *reasonPage) drawing() app.UI {
	scene := draw.Detail(r.q.Drawing, draw.DetailOptions{Gaps: r.q.Kind == devices.Place})
	var rows []app.UI
	for i, p := range r.picks {
		how := ""
		if r.q.Kind != devices.Place {
			row := scene.Table[i+1]
			how = row[1] + ": " + row[3]
		}
		rows = append(rows, app.Li().Body(
			app.Button().Type("button").Class("pick-row").ID("pick-"+strconv.Itoa(i)).DataSet("key", p.Key).DataSet("state", r.state(p)).
				Aria("pressed", p.Key == r.spot).Disabled(r.done).OnClick(r.onPick).Body(
				app.Span().Class("what").Text(p.Says),
				app.Span().Class("how").Text(how),
			),
		))
	}
	return app.Div().Class("detail").Body(
		dressed(scene.Tree(), "group", r.dress),
		app.Details().Body(
			app.Summary().ID("as-list").Text("Answer from a list instead"),
			app.Ol().Class("pick-list").Body(rows...),
		),
	)
}

// dress makes a part of the drawing one that can be tapped and tabbed to.
func (r *reasonPage) dress(key string, e app.HTMLElem) {
	i := slices.IndexFunc(r.picks, func(p draw.Pick) bool { return p.Key == key })
	if i < 0 {
		return
	}
	e.Attr("role", "button").DataSet("state", r.state(r.picks[i])).Aria("pressed", key == r.spot)
	if r.done {
		e.Aria("disabled", true)
		return
	}
	e.TabIndex(0).OnClick(r.onPick).On("keydown", r.onPickKey)
}

// state is how a place is shown: marked, and once it is judged right or not.
func (r *reasonPage) state(p draw.Pick) string {
	right := slices.Contains(r.q.Places, p.Spot)
	switch {
	case r.done && right && p.Key == r.spot, r.done && right && !r.placed():
		return "right"
	case r.done && p.Key == r.spot:
		return "not"
	case p.Key == r.spot:
		return "marked"
	}
	return ""
}

// placed reports whether the place that was marked is right.
func (r *reasonPage) placed() bool {
	spot, ok := r.pointed()
	return ok && slices.Contains(r.q.Places, spot)
}

// options are the options to choose from.
func (r *reasonPage) options() app.UI {
	var list []app.UI
	for i := range r.q.Options {
		list = append(list, r.optionRow(i, r.q.Options[i].Text))
	}
	return app.Ol().Class("answers").Body(list...)
}

func (r *reasonPage) optionRow(i int, text string) app.UI {
	o := r.q.Options[i]
	tone, sign := "", ""
	switch {
	case r.done && o.Right:
		tone, sign = good, "✓ Right"
	case r.done && i == r.option:
		tone, sign = bad, "✗ Not right"
	}
	why := ""
	if r.done && (o.Right || i == r.option) {
		why = o.Why
	}
	return app.Li().Class("line", "given").DataSet("tone", tone).Body(
		app.Button().Type("button").Class("planted").ID("option-"+strconv.Itoa(i)).DataSet("line", i).
			Aria("pressed", i == r.option).Disabled(r.done).Text(text).OnClick(r.onOption),
		app.P().Class("word").Hidden(sign == "").Body(app.Strong().Text(sign)),
		app.P().Class("because").Hidden(why == "").Text(why),
	)
}

// drawings are the drawings to choose from.
func (r *reasonPage) drawings() app.UI {
	var list []app.UI
	for i, a := range r.q.Choices {
		scene := draw.Detail(a, draw.DetailOptions{Title: r.q.Options[i].Text})
		list = append(list, app.Section().Class("detail").Aria("label", r.q.Options[i].Text).Body(
			svg(scene.Tree()),
			app.Details().Body(app.Summary().Text(r.q.Options[i].Text+" as a table"), table(scene.Title, scene.Table)),
			app.Ol().Class("answers").Body(r.optionRow(i, r.q.Options[i].Text)),
		))
	}
	return app.Div().Class("drawings").Body(list...)
}

// ordering is the items still to be put in order, under those that are.
func (r *reasonPage) ordering() app.UI {
	wrong := -1
	if r.done {
		wrong = r.judged()[0].At
	}
	var set, left []app.UI
	for at, n := range r.order {
		tone := ""
		switch {
		case !r.done || wrong >= 0 && at > wrong:
		case at == wrong:
			tone = bad
		default:
			tone = good
		}
		set = append(set, app.Li().DataSet("tone", tone).Body(
			app.Span().Class("number").Text(strconv.Itoa(at+1)),
			app.Span().Class("what").Text(r.q.Items[n]),
			r.mover("up-", "↑", "Earlier: ", at, at == 0, r.onUp),
			r.mover("down-", "↓", "Later: ", at, at == len(r.order)-1, r.onDown),
			r.mover("back-", "✕", "Take out: ", at, false, r.onBack),
		))
	}
	for n, text := range r.q.Items {
		if !slices.Contains(r.order, n) {
			left = append(left, app.Li().Body(
				app.Button().Type("button").Class("planted").ID("item-"+strconv.Itoa(n)).DataSet("line", n).Text(text).OnClick(r.onItem),
			))
		}
	}
	return app.Div().Class("asking").Body(
		app.P().Class("aside").Hidden(len(left) == 0).Text("Tap what comes first, then the next."),
		app.Ol().Class("ordered").ID("ordered").Aria("label", "Your order").Hidden(len(set) == 0).Body(set...),
		app.Ul().Class("answers").Aria("label", "Still to come").Hidden(len(left) == 0).Body(left...),
		r.inOrder(),
	)
}

func (r *reasonPage) mover(id, sign, says string, at int, off bool, f app.EventHandler) app.UI {
	return app.Button().Type("button").Class("mover").ID(id+strconv.Itoa(at)).DataSet("line", at).
		Aria("label", says+r.q.Items[r.order[at]]).Hidden(r.done).Disabled(off).Text(sign).OnClick(f)
}

// inOrder is the right order with its reasons.
func (r *reasonPage) inOrder() app.UI {
	if !r.done {
		return app.Div().Hidden(true)
	}
	var list []app.UI
	for i, text := range r.q.Right {
		list = append(list, app.Li().Body(app.Span().Class("number").Text(strconv.Itoa(i+1)), app.Span().Class("what").Body(
			app.Strong().Text(text), app.Span().Class("because").Text(" "+r.q.Whys[i]))))
	}
	return app.Details().Open(!r.right()).Body(app.Summary().Text("The order, and why"), app.Ol().Class("ordered").Body(list...))
}

// verdict says whether the answer is right, why, and what would happen.
func (r *reasonPage) verdict() app.UI {
	if !r.done {
		return app.Section().Class("outcome").Hidden(true)
	}
	word := "✗ Not right"
	if r.right() {
		word = "✓ Right"
	}
	return app.Section().Class("outcome").ID("verdict").TabIndex(-1).Aria("labelledby", "verdict-word").DataSet("done", r.right()).Body(
		app.H2().ID("verdict-word").Text(word),
		app.Div().Body(r.says()...),
		r.shows(),
		app.P().Class("caution").Hidden(r.q.Caution == "").Text("⚠ "+r.q.Caution),
		r.cardOf(),
	)
}

// says is what is said to the answer.
func (r *reasonPage) says() []app.UI {
	judged := r.judged()
	var list []app.UI
	add := func(lead, text string) {
		if text != "" {
			list = append(list, app.P().Body(app.Strong().Text(lead), app.Text(text)))
		}
	}
	switch r.q.Kind {
	case devices.Wrong:
		lead := map[bool]string{true: "✓ ", false: "✗ "}
		add(lead[judged[0].Right]+"The place: ", r.placeSays())
		add(lead[judged[1].Right]+"The reason: ", r.q.Fault.Did)
		add("What happens: ", r.q.Fault.Then)
	case devices.Place:
		add("", judged[0].Says)
		if judged[0].Right {
			add("Without it: ", r.q.Device.Without)
		} else {
			add("It goes ", r.q.Device.Place+".")
		}
	case devices.Sequence, devices.Order:
		add("", judged[0].Says)
	default:
		for i, o := range r.q.Options {
			if i == r.option && !o.Right {
				add(o.Text+": ", o.Why)
			}
		}
		for _, o := range r.q.Options {
			if o.Right {
				add("Right is: ", problems.Sentence(o.Text)+". "+o.Why)
			}
		}
	}
	return list
}

// placeSays names the places that may be marked.
func (r *reasonPage) placeSays() string {
	return placesText(r.picks, r.q)
}

func placesText(picks []draw.Pick, q *devices.Question) string {
	says := ""
	for _, p := range picks {
		if slices.Contains(q.Places, p.Spot) {
			if says != "" {
				says += " or "
			}
			says += p.Says
		}
	}
	return says + "."
}

// shows is the number that shows the consequence, with the problem that works
// it out and its picture.
func (r *reasonPage) shows() app.UI { return consequence(r.q.Shows, r.q.Seed, r.house) }

// consequence is the number that shows what happens, the problem that works
// it out, and its picture.
func consequence(of devices.Shown, seed uint64, house problems.House) app.UI {
	text, p := devices.Consequence(of, seed, house)
	if text == "" {
		return app.Div().Hidden(true)
	}
	body := []app.UI{app.P().Text(text)}
	if p != nil {
		if picture := draw.Figure(p); picture != nil {
			body = append(body, app.Details().Body(app.Summary().Text("The picture"), &riser{Scene: picture}))
		}
		body = append(body, app.A().Class("switch").ID("work-it").Href(address{skill: p.Skill, seed: seed, house: house}.url()).Text("Work that number"))
	}
	return app.Div().Class("number-of").Body(body...)
}

// cardOf leads to the card of the device that is asked about.
func (r *reasonPage) cardOf() app.UI {
	if r.q.Device == nil {
		return app.Div().Hidden(true)
	}
	return app.A().Class("switch").Href(deviceURL(r.q.Device)).Text("Card: " + r.q.Device.Name)
}

// otherKinds lead to questions of one kind, or of all mixed.
func (r *reasonPage) otherKinds() app.UI {
	list := []app.UI{kindLink("", "Mixed", "all kinds in turn")}
	for _, k := range askedKinds {
		list = append(list, kindLink("?kind="+k.word, problems.Sentence(string(k.kind)), k.note))
	}
	return app.Details().Class("other-kinds").Body(
		app.Summary().ID("kinds").Text("Choose the kind of question"),
		app.Ul().Class("links").Body(list...),
		app.A().Class("switch").Href(link(devicePath)).Text("All devices, card by card"),
	)
}

func kindLink(query, text, note string) app.UI {
	return app.Li().Body(app.A().Href(link(reasonPath)+query).Body(app.Span().Text(text), app.Span().Class("how").Text(note)))
}

// bar is the next thing to do.
func (r *reasonPage) bar() app.UI {
	if bar, ok := r.taskBar(); ok {
		return bar
	}
	if r.done {
		return app.Div().Class("bar").Body(button("next", "Next question", true).OnClick(r.onNext))
	}
	lacking := r.lacking()
	asks := slices.Contains([]devices.Kind{devices.Sequence, devices.Order, devices.Place, devices.Wrong}, r.q.Kind)
	return app.Div().Class("bar").Hidden(!asks).Body(
		app.P().Class("lacking").Hidden(lacking == "").Text(lacking),
		button("check", "Check", lacking == "").Hidden(lacking != "" || r.task.silent()).OnClick(r.onCheck),
	)
}
