package page

import (
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/record"
)

// database is the browser's database as record.js offers it; false outside
// of a browser.
func database() (app.Value, bool) {
	if !app.IsClient {
		return nil, false
	}
	js := app.Window().Get("riserworkRecord")
	return js, js.Truthy()
}

// asRows are entries as the database takes them: names and texts, one a line.
func asRows(list []record.Entry) (ids, texts string, err error) {
	var names, lines []string
	for _, e := range list {
		line, err := e.Write()
		if err != nil {
			return "", "", err
		}
		names, lines = append(names, strings.ReplaceAll(e.ID, "\n", " ")), append(lines, line)
	}
	return strings.Join(names, "\n"), strings.Join(lines, "\n"), nil
}

// settled calls ok or fail once a promise is settled.
func settled(promise app.Value, ok func(app.Value), fail func(string)) {
	var onOK, onFail app.Func
	free := func() {
		onOK.Release()
		onFail.Release()
	}
	onOK = app.FuncOf(func(_ app.Value, args []app.Value) any {
		free()
		ok(first(args))
		return nil
	})
	onFail = app.FuncOf(func(_ app.Value, args []app.Value) any {
		free()
		fail(fault(first(args)))
		return nil
	})
	promise.Call("then", onOK, onFail)
}

func first(args []app.Value) app.Value {
	if len(args) == 0 {
		return app.Undefined()
	}
	return args[0]
}

// fault is what an error of the browser says of itself.
func fault(err app.Value) string {
	if !err.Truthy() {
		return "the browser gave no reason"
	}
	return err.Get("name").String() + ": " + err.Get("message").String()
}
