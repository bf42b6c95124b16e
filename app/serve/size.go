package serve

import (
	"fmt"
	"io"
	"os"
)

// SizeCommand prints the bytes of files.
func SizeCommand(args []string) error {
	return Sizes(os.Stdout, args)
}

// Sizes prints the bytes of each file, plain and compressed as the site has
// it, and below them each as a multiple of the last file.
func Sizes(out io.Writer, paths []string) error {
	if len(paths) == 0 {
		return fmt.Errorf("no file was named, expected one or more")
	}
	rows := make([][]int, len(paths))
	fmt.Fprintf(out, "%-36s %10s %10s %10s\n", "bytes", "plain", "gzip", "brotli")
	for i, path := range paths {
		row, err := sizes(path)
		if err != nil {
			return err
		}
		rows[i] = row
		fmt.Fprintf(out, "%-36s %10d %10d %10d\n", path, row[0], row[1], row[2])
	}
	last := rows[len(rows)-1]
	for i, path := range paths[:len(paths)-1] {
		fmt.Fprintf(out, "%-36s", path+" / last")
		for j := range last {
			fmt.Fprintf(out, " %10.3f", float64(rows[i][j])/float64(max(last[j], 1)))
		}
		fmt.Fprintln(out)
	}
	return nil
}

// sizes are the plain, gzip and brotli bytes of a file.
func sizes(path string) ([]int, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("the file cannot be read, expected one to measure: %w", err)
	}
	row := []int{len(data)}
	for i := len(codings) - 1; i >= 0; i-- {
		packed, err := os.ReadFile(path + codings[i].ending)
		if err != nil || !codings[i].holds(packed, data) {
			if packed, err = codings[i].pack(data); err != nil {
				return nil, err
			}
		}
		row = append(row, len(packed))
	}
	return row, nil
}
