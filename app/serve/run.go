package serve

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"
	"time"
)

// Command serves the built site until it is told to stop.
func Command(args []string) error {
	fs := flags("serve")
	addr := fs.String("addr", "127.0.0.1:8080", "address to listen on")
	dir := fs.String("dir", filepath.Join("web", buildName), "folder of the built site")
	if err := parse(fs, args); err != nil {
		return err
	}
	site, err := Load(*dir)
	if err != nil {
		return err
	}
	l, err := Listen(*addr)
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	fmt.Printf("Riserwork is at http://%s/ (Ctrl-C stops it)\n", l.Addr())
	return Serve(ctx, l, site)
}

// Listen opens an address.
func Listen(addr string) (net.Listener, error) {
	l, err := net.Listen("tcp", addr)
	if errors.Is(err, syscall.EADDRINUSE) {
		return nil, fmt.Errorf("the address %s is in use by another program, expected a free one: stop that program, or name another with `make serve ADDR=127.0.0.1:8081`", addr)
	}
	if err != nil {
		return nil, fmt.Errorf("the address was %q, expected one that can be listened on, such as 127.0.0.1:8080: %w", addr, err)
	}
	return l, nil
}

// Serve answers from a site until ctx ends; answers under way are finished.
func Serve(ctx context.Context, l net.Listener, site http.Handler) error {
	server := &http.Server{
		Handler:           site,
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       10 * time.Second,
		WriteTimeout:      5 * time.Minute, // the program on a slow line
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    16 << 10,
	}
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(l) }()
	select {
	case err := <-failed:
		return err
	case <-ctx.Done():
	}
	last, cancel := context.WithTimeout(context.Background(), 5*time.Second)
	defer cancel()
	if err := server.Shutdown(last); err != nil {
		return server.Close()
	}
	return nil
}

func flags(name string) *flag.FlagSet {
	fs := flag.NewFlagSet(name, flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	return fs
}

// parse reads flags and refuses anything after them.
func parse(fs *flag.FlagSet, args []string) error {
	if err := fs.Parse(args); err != nil {
		return fmt.Errorf("%s: %w", fs.Name(), err)
	}
	if fs.NArg() > 0 {
		return fmt.Errorf("%s was given %q, expected flags only", fs.Name(), fs.Arg(0))
	}
	return nil
}
