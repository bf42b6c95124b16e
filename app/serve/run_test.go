package serve_test

import (
	"context"
	"net/http"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/serve"
)

func TestServeStops(t *testing.T) {
	l, err := serve.Listen("127.0.0.1:0")
	require.NoError(t, err)
	ctx, stop := context.WithCancel(t.Context())
	done := make(chan error, 1)
	go func() { done <- serve.Serve(ctx, l, site(t)) }()

	r, err := http.Get("http://" + l.Addr().String() + "/")
	require.NoError(t, err)
	r.Body.Close()
	assert.Equal(t, http.StatusOK, r.StatusCode)

	stop()
	select {
	case err := <-done:
		require.NoError(t, err)
	case <-time.After(10 * time.Second):
		require.Fail(t, "the server did not stop")
	}
	_, err = http.Get("http://" + l.Addr().String() + "/")
	assert.Error(t, err)
}

func TestListenRefuses(t *testing.T) {
	l, err := serve.Listen("127.0.0.1:0")
	require.NoError(t, err)
	defer l.Close()
	_, err = serve.Listen(l.Addr().String())
	assert.ErrorContains(t, err, "is in use by another program")
	_, err = serve.Listen("nowhere")
	assert.ErrorContains(t, err, `the address was "nowhere", expected one that can be listened on`)
}

func TestCommandsRefuse(t *testing.T) {
	tests := []struct {
		run  func([]string) error
		args []string
		says string
	}{
		{serve.Command, []string{"-port", "1"}, "serve: flag provided but not defined: -port"},
		{serve.Command, []string{"now"}, `serve was given "now", expected flags only`},
		{serve.Command, []string{"-dir", t.TempDir()}, "expected a built site"},
		{serve.BuildCommand(pages), []string{"-dir", t.TempDir()}, "holds no index.html"},
		{serve.SizeCommand, nil, "no file was named"},
	}
	for _, test := range tests {
		assert.ErrorContains(t, test.run(test.args), test.says)
	}
}
