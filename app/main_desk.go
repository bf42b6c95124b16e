//go:build !js

// The program as the command line runs it: it builds and serves the page, and
// answers for scripts and instructors.
package main

import (
	"fmt"
	"io"
	"os"

	"riserwork/app/desk"
	"riserwork/app/page"
	"riserwork/app/serve"
)

// command is one word of the command line.
type command struct {
	name, usage string
	run         func(args []string) error
}

// commands are what the program can be asked for.
var commands = []command{
	{"serve", "serve the built page: -addr, -dir", serve.Command},
	{"build", "make the site ready to serve: -dir, -quick", serve.BuildCommand(serve.Pages{Paths: page.Paths(), Contents: page.Contents()})},
	{"size", "print the bytes of files, plain and compressed: FILE ...", serve.SizeCommand},
	{"skills", "list the skills: -json", func(args []string) error { return desk.Skills(args, os.Stdout) }},
	{"problem", "print one problem with its working: -skill, -seed, -units, -code, -given, -json", func(args []string) error { return desk.Problem(args, os.Stdout) }},
	{"paper", "print a whole-building paper with its solution and mark scheme: -seed, -size, -units, -code, -json", func(args []string) error { return desk.Paper(args, os.Stdout) }},
	{"solve", "work a whole building out, told in JSON on standard input: -json", func(args []string) error { return desk.Solve(args, os.Stdin, os.Stdout) }},
	{"mark", "mark working: requests in JSON, one a line, from standard input: -json, -alone", func(args []string) error { return desk.Mark(args, os.Stdin, os.Stdout, os.Stderr) }},
	{"set", "make a set of problems and print its link: -title, -skill, -chapter, ...", func(args []string) error { return desk.Set(args, os.Stdout) }},
	{"sheet", "print a set on paper, or its answer key, as HTML: -set, -learners, -paper, -key", func(args []string) error { return desk.Sheet(args, os.Stdout) }},
	{"classmark", "mark the hand-ins of a class: -set, -grades, -json, -override, FILE ...", func(args []string) error { return desk.ClassMark(args, os.Stdout, os.Stderr) }},
}

func main() {
	if len(os.Args) < 2 {
		usage(os.Stderr)
		os.Exit(2)
	}
	if err := run(os.Args[1], os.Args[2:]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(name string, args []string) error {
	switch name {
	case "help", "-h", "-help", "--help":
		usage(os.Stdout)
		return nil
	}
	for _, c := range commands {
		if c.name == name {
			return c.run(args)
		}
	}
	return fmt.Errorf("the command was %q, expected one of those that `help` lists", name)
}

func usage(out io.Writer) {
	fmt.Fprintln(out, "Riserwork commands:")
	for _, c := range commands {
		fmt.Fprintf(out, "  %-9s %s\n", c.name, c.usage)
	}
}
