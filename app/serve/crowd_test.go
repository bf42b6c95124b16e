package serve_test

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/serve"
)

// open serves a site on a free port until the test ends.
func open(t testing.TB, site *serve.Site) string {
	l, err := serve.Listen("127.0.0.1:0")
	require.NoError(t, err)
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- serve.Serve(ctx, l, site) }()
	t.Cleanup(func() {
		stop()
		assert.NoError(t, <-done)
	})
	return l.Addr().String()
}

// A class, a school, a link that went round: a thousand connections at once,
// slow readers and nonsense among them, and every proper request is answered.
func TestCrowd(t *testing.T) {
	const (
		readers  = 1000
		requests = 5
	)
	addr := open(t, site(t))
	before := heap()

	for _, line := range []string{"", "GET", "GET / HTTP/9.9\r\n\r\n", "\x00\x01\x02\r\n\r\n", "GET /" + strings.Repeat("a", 1<<20) + " HTTP/1.1\r\n\r\n"} {
		c, err := net.Dial("tcp", addr)
		require.NoError(t, err)
		defer c.Close()
		// The server may hang up before all of it is sent.
		_, _ = io.WriteString(c, line)
	}
	for range 50 { // asks, and reads nothing
		c, err := net.Dial("tcp", addr)
		require.NoError(t, err)
		defer c.Close()
		_, err = io.WriteString(c, "GET /app.wasm HTTP/1.1\r\nHost: here\r\n\r\n")
		require.NoError(t, err)
	}

	faults := make(chan error, readers)
	var all sync.WaitGroup
	for range readers {
		all.Go(func() { faults <- readSome(addr, requests) })
	}
	all.Wait()
	close(faults)
	for err := range faults {
		assert.NoError(t, err)
	}
	grown := heap() - before
	t.Logf("heap with a thousand connections closed: %+d kB", grown/1024)
	assert.Less(t, grown, int64(32<<20))
}

// readSome asks for the program over one connection that is kept.
func readSome(addr string, requests int) error {
	c, err := net.DialTimeout("tcp", addr, 30*time.Second)
	if err != nil {
		return err
	}
	defer c.Close()
	r := bufio.NewReader(c)
	for range requests {
		if _, err := io.WriteString(c, "GET /app.wasm HTTP/1.1\r\nHost: here\r\n\r\n"); err != nil {
			return err
		}
		answer, err := http.ReadResponse(r, nil)
		if err != nil {
			return err
		}
		data, err := io.ReadAll(answer.Body)
		if err != nil {
			return err
		}
		if answer.StatusCode != 200 || string(data) != program {
			return fmt.Errorf("the answer was %s with %d bytes, expected the program", answer.Status, len(data))
		}
	}
	return nil
}

// heap is the bytes in use, after a collection.
func heap() int64 {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int64(m.HeapAlloc)
}
