package desk

import (
	"encoding/csv"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"sync"

	"riserwork/problems/sets"
)

// ClassMark marks hand-ins of files, folders and archives and writes the table
// of the class. One that cannot be read is a row of the table too.
func ClassMark(args []string, out, errs io.Writer) error {
	fs := flags("classmark")
	link := fs.String("set", "", "link of the set; empty: that of the first hand-in")
	grades := fs.Bool("grades", false, "two columns for a grade book")
	asJSON := fs.Bool("json", false, "print JSON")
	byHand := fs.String("override", "", "CSV file of marks set by hand: learner, problem, marks, reason")
	if err := fs.Parse(args); err != nil {
		return err
	}
	if fs.NArg() == 0 {
		return fmt.Errorf("classmark was given no hand-ins, expected files, folders or ZIP archives")
	}
	var set *sets.Set
	if *link != "" {
		var err error
		if set, err = sets.ReadAddress(*link); err != nil {
			return err
		}
	}
	c, err := classOf(set, fs.Args())
	if err != nil {
		return err
	}
	if err := override(c, *byHand); err != nil {
		return err
	}
	r := c.Report()
	fmt.Fprintf(errs, "%d hand-ins, %d learners counted\n", len(r.Papers), r.Counted)
	switch {
	case *asJSON:
		return printJSON(out, r)
	case *grades:
		_, err = io.WriteString(out, r.Grades())
	default:
		_, err = io.WriteString(out, r.CSV(c.Set))
	}
	return err
}

// classOf marks every hand-in under the paths, on all cores.
func classOf(set *sets.Set, paths []string) (*sets.Class, error) {
	for _, p := range paths {
		if _, err := os.Stat(p); err != nil {
			return nil, fmt.Errorf("%s could not be opened, expected a file, a folder or a ZIP archive", p)
		}
	}
	pieces := make(chan sets.Piece, 4*runtime.NumCPU())
	go func() {
		defer close(pieces)
		for _, p := range paths {
			walk(p, func(p sets.Piece) { pieces <- p })
		}
	}()
	// Those before the first that names its set wait for it.
	var early []sets.Piece
	for set == nil {
		p, ok := <-pieces
		if !ok {
			return nil, fmt.Errorf("none of the files holds a hand-in that can be read")
		}
		early = append(early, p)
		set, _ = sets.SetOf(p)
	}
	c := sets.NewClass(set)
	papers := make(chan sets.Paper)
	var workers sync.WaitGroup
	for range runtime.NumCPU() {
		workers.Go(func() {
			m := sets.NewMarker(set)
			for p := range pieces {
				papers <- m.Piece(p)
			}
		})
	}
	workers.Go(func() {
		m := sets.NewMarker(set)
		for _, p := range early {
			papers <- m.Piece(p)
		}
	})
	go func() {
		workers.Wait()
		close(papers)
	}()
	for p := range papers {
		c.Add(p)
	}
	return c, nil
}

// walk takes every file under a path apart. Too large a file is not read.
func walk(root string, take func(sets.Piece)) {
	filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err == nil && d.IsDir() {
			return nil
		}
		if err == nil {
			err = open(path, take)
		}
		if err != nil {
			take(sets.Piece{Source: filepath.Base(path), Fault: fmt.Errorf("the file could not be read")})
		}
		return nil
	})
}

func open(path string, take func(sets.Piece)) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return err
	}
	if !info.Mode().IsRegular() {
		return fmt.Errorf("it is no regular file")
	}
	name := filepath.Base(path)
	head := make([]byte, 4)
	n, _ := f.ReadAt(head, 0)
	switch size := info.Size(); {
	case sets.IsZip(head[:n]):
		sets.Unzip(name, f, size, take)
	case size > sets.MaxText:
		take(sets.Piece{Source: name, Fault: sets.TooLarge(size)})
	default:
		data, err := io.ReadAll(io.LimitReader(f, sets.MaxText))
		if err != nil {
			return err
		}
		sets.Gather(name, data, take)
	}
	return nil
}

// override reads marks that were set by hand.
func override(c *sets.Class, file string) error {
	if file == "" {
		return nil
	}
	f, err := os.Open(file)
	if err != nil {
		return fmt.Errorf("the marks set by hand could not be read: %w", err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.FieldsPerRecord = 4
	rows, err := r.ReadAll()
	if err != nil {
		return fmt.Errorf("the marks set by hand are no CSV of learner, problem, marks and reason: %w", err)
	}
	for i, row := range rows {
		if i == 0 && slices.Contains(row, "reason") {
			continue
		}
		problem, err1 := strconv.Atoi(row[1])
		marks, err2 := strconv.Atoi(row[2])
		if err1 != nil || err2 != nil {
			return fmt.Errorf("row %d of the marks set by hand has %q and %q, expected two whole numbers", i+1, row[1], row[2])
		}
		if err := c.Put(sets.Override{Learner: row[0], Problem: problem, Marks: marks, Reason: row[3]}); err != nil {
			return fmt.Errorf("row %d of the marks set by hand: %w", i+1, err)
		}
	}
	return nil
}
