package serve

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// buildName is the folder, under the one of the sources, that the site is
// built into. The compiler puts the two built files there.
const (
	buildName  = "build"
	wasmName   = "app.wasm"
	execName   = "wasm_exec.js"
	workerName = "sw.js"
	styleName  = "style.css"
)

// BuildCommand makes the site.
func BuildCommand(pages Pages) func(args []string) error {
	return func(args []string) error {
		fs := flags("build")
		dir := fs.String("dir", "web", "folder of the site's sources")
		quick := fs.Bool("quick", false, "leave out the compressed forms, which take most of the time")
		if err := parse(fs, args); err != nil {
			return err
		}
		return Build(*dir, pages, !*quick)
	}
}

// Pages is what the site has to know of the program.
type Pages struct {
	Paths    []string // of the pages below the top one
	Contents string   // HTML to read while the program is on its way
}

// Build makes the site in dir/build, out of the files of dir and of the
// program that was compiled there: blanks are filled in, each file gets its
// compressed forms if asked for, the pages and headers are written for hosts
// that hand out files and know nothing else, and what does not belong to the
// site is removed.
func Build(dir string, pages Pages, compress bool) error {
	out := filepath.Join(dir, buildName)
	site, err := gather(dir, out)
	if err != nil {
		return err
	}
	if err := join(site); err != nil {
		return err
	}
	if err := fill(site, pages.Contents); err != nil {
		return err
	}
	keep := map[string]bool{}
	if err := forHosts(out, site[pageName], pages.Paths, keep); err != nil {
		return err
	}
	for _, name := range names(site) {
		k, err := kindOf(name)
		if err != nil {
			return err
		}
		data := site[name]
		keep[name] = true
		if err := put(filepath.Join(out, name), data); err != nil {
			return err
		}
		if k.packed || !compress {
			continue
		}
		for _, c := range codings {
			keep[name+c.ending] = true
			if err := pack(filepath.Join(out, name+c.ending), c, data); err != nil {
				return err
			}
		}
	}
	return clear(out, keep)
}

// gather reads the sources and the compiled program.
func gather(dir, out string) (map[string][]byte, error) {
	sources, folders, err := list(dir)
	if err != nil {
		return nil, err
	}
	for _, name := range folders {
		if name != buildName {
			return nil, fmt.Errorf("%s is a folder, expected files only", filepath.Join(dir, name))
		}
	}
	site := map[string][]byte{}
	for _, name := range sources {
		if site[name], err = os.ReadFile(filepath.Join(dir, name)); err != nil {
			return nil, err
		}
	}
	for _, name := range []string{pageName, workerName} {
		if site[name] == nil {
			return nil, fmt.Errorf("the folder %s holds no %s, expected the sources of the site", dir, name)
		}
	}
	for _, name := range []string{wasmName, execName} {
		if site[name], err = os.ReadFile(filepath.Join(out, name)); err != nil {
			return nil, fmt.Errorf("the compiled program is not in %s, expected %s: run `make build`: %w", out, name, err)
		}
	}
	return site, nil
}

// join puts the style sheets that the page's own imports into it, so that they
// come in one piece.
func join(site map[string][]byte) error {
	for _, name := range names(site) {
		if filepath.Ext(name) != ".css" || name == styleName {
			continue
		}
		sheet, err := blank(site, styleName, `@import url("`+name+`");`, string(site[name]))
		if err != nil {
			return err
		}
		site[styleName] = sheet
		delete(site, name)
	}
	return nil
}

// fill puts the size of the program, the policy and the contents into the page, and the list of files with
// a version made from their content into the worker.
func fill(site map[string][]byte, contents string) error {
	var err error
	for _, b := range []struct{ mark, value string }{
		{"{{program bytes}}", strconv.Itoa(len(site[wasmName]))},
		{"{{policy}}", policy},
		{"{{contents}}", contents},
	} {
		if site[pageName], err = blank(site, pageName, b.mark, b.value); err != nil {
			return err
		}
	}
	var all strings.Builder
	files := []string{}
	for _, name := range names(site) {
		fmt.Fprintln(&all, name, hashOf(site[name]))
		switch name {
		case workerName:
		case pageName:
			files = append(files, "./")
		default:
			files = append(files, name)
		}
	}
	list, err := json.Marshal(files)
	if err != nil {
		return err
	}
	if site[workerName], err = blank(site, workerName, `"{{version}}"`, strconv.Quote(hashOf([]byte(all.String())))); err != nil {
		return err
	}
	site[workerName], err = blank(site, workerName, `["{{files}}"]`, string(list))
	return err
}

// blank is the file with one blank filled in.
func blank(site map[string][]byte, name, mark, value string) ([]byte, error) {
	if n := bytes.Count(site[name], []byte(mark)); n != 1 {
		return nil, fmt.Errorf("%s has the blank %s %d times, expected once", name, mark, n)
	}
	return bytes.ReplaceAll(site[name], []byte(mark), []byte(value)), nil
}

// pack writes the compressed form, unless the one there is good: compressing
// the program takes long, unpacking it to compare does not.
func pack(path string, c coding, data []byte) error {
	if old, err := os.ReadFile(path); err == nil && c.holds(old, data) {
		return nil
	}
	packed, err := c.pack(data)
	if err != nil {
		return err
	}
	return put(path, packed)
}

// put writes a file, unless it is there as it should be.
func put(path string, data []byte) error {
	if old, err := os.ReadFile(path); err == nil && bytes.Equal(old, data) {
		return nil
	}
	return os.WriteFile(path, data, 0o644)
}

// clear removes what an earlier build left.
func clear(out string, keep map[string]bool) error {
	files, folders, err := list(out)
	if err != nil {
		return err
	}
	for _, name := range append(files, folders...) {
		if keep[name] {
			continue
		}
		if err := os.RemoveAll(filepath.Join(out, name)); err != nil {
			return err
		}
	}
	return nil
}

func names(site map[string][]byte) []string {
	var list []string
	for name := range site {
		list = append(list, name)
	}
	slices.Sort(list)
	return list
}
