package preview

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"strings"
	"sync"
	"testing"
	"time"
)

// Connections that say nothing, or too slowly, are closed, and somebody who asks is answered in the end though they
// take every place.
func TestFlood(t *testing.T) {
	l := quick
	l.header = 300 * time.Millisecond
	r := start(t, "A-1", plainRead, l)
	r.until("a drawing", good)
	var flood []net.Conn
	for i := range 10 * l.conns {
		c := r.dial()
		flood = append(flood, c)
		switch i % 3 {
		case 1:
			fmt.Fprint(c, "GET / HTTP/1.1\r\nHost: ") // and no end
		case 2:
			fmt.Fprintf(c, "POST / HTTP/1.1\r\nHost: %s\r\nContent-Length: 100000\r\n\r\nx", r.host()) // a body that does not come
		}
	}
	if code, _, _ := r.ask("GET", "/page.js", nil); code != 200 {
		t.Errorf("in a flood: %d", code)
	}
	for i, c := range flood {
		if _, err := io.Copy(io.Discard, c); err != nil && strings.Contains(err.Error(), "timeout") {
			t.Errorf("connection %d is still open", i)
		}
	}
}

// No more connections than allowed are served at once: one more waits until another is gone.
func TestConnectionsAreCounted(t *testing.T) {
	r := start(t, "A-1", plainRead, quick)
	var held []net.Conn
	for range quick.conns {
		held = append(held, r.dial())
	}
	c := r.dial()
	fmt.Fprintf(c, "HEAD / HTTP/1.1\r\nHost: %s\r\n\r\n", r.host())
	if err := c.SetReadDeadline(time.Now().Add(200 * time.Millisecond)); err != nil {
		t.Fatal(err)
	}
	if n, err := c.Read(make([]byte, 1)); n > 0 || !errors.Is(err, os.ErrDeadlineExceeded) {
		t.Errorf("one too many read %d bytes, %v", n, err)
	}
	held[0].Close()
	if err := c.SetReadDeadline(time.Now().Add(patience)); err != nil {
		t.Fatal(err)
	}
	if line, err := bufio.NewReader(c).ReadString('\n'); err != nil || line != "HTTP/1.1 200 OK\r\n" {
		t.Errorf("in the place of another: %q, %v", line, err)
	}
}

// A long head is not taken in.
func TestLongHead(t *testing.T) {
	r := start(t, "A-1", plainRead, usual)
	c := r.dial()
	fmt.Fprintf(c, "GET / HTTP/1.1\r\nHost: %s\r\nX-Long: %s\r\n\r\n", r.host(), strings.Repeat("a", 64<<10))
	if line, err := bufio.NewReader(c).ReadString('\n'); err != nil || !strings.HasPrefix(line, "HTTP/1.1 431 ") {
		t.Errorf("a head of 64 kilobytes: %q, %v", line, err)
	}
}

// Who does not read what was asked for is dropped.
func TestSlowReader(t *testing.T) {
	big := strings.Repeat("x", 64<<20) // more than the buffers between
	l := quick
	l.write = 2 * time.Second
	r := start(t, "A-1", func(_ context.Context, _ []byte, publish func(Model)) []string {
		publish(Model{Sheets: []Entry{{ID: "A-1"}}, Draw: func(string) ([]byte, error) { return []byte(big), nil }})
		return nil
	}, l)
	r.until("a drawing", good)
	c := r.dial()
	fmt.Fprintf(c, "GET /sheet/A-1?drawing=1 HTTP/1.1\r\nHost: %s\r\n\r\n", r.host())
	in := bufio.NewReader(c)
	if line, err := in.ReadString('\n'); err != nil || line != "HTTP/1.1 200 OK\r\n" {
		t.Fatalf("%q, %v", line, err)
	}
	time.Sleep(l.write + 500*time.Millisecond) // reads nothing
	n, _ := io.Copy(io.Discard, in)
	if n >= int64(len(big)) {
		t.Error("everything was still sent")
	}
}

// More pages than may wait are told to come again; those that wait are answered when there is news.
func TestPagesWait(t *testing.T) {
	l := quick
	l.hold, l.conns = patience, 64
	r := start(t, "A-1", plainRead, l)
	now := r.until("a drawing", good).Number
	codes := make(chan int, 20)
	var all sync.WaitGroup
	for range cap(codes) {
		all.Go(func() {
			code, _, _, err := r.try("GET", fmt.Sprintf("/state?after=%d", now), nil)
			if err != nil {
				t.Error(err)
			}
			codes <- code
		})
	}
	for range cap(codes) - l.waiting {
		if code := <-codes; code != http.StatusServiceUnavailable {
			t.Errorf("one too many: %d", code)
		}
	}
	r.save("A-1 A-2")
	all.Wait()
	for range l.waiting {
		if code := <-codes; code != 200 {
			t.Errorf("news: %d", code)
		}
	}
}

// The end is orderly, with a page waiting.
func TestStops(t *testing.T) {
	l := quick
	l.hold = patience
	r := start(t, "A-1", plainRead, l)
	now := r.until("a drawing", good).Number
	waits := make(chan int, 1)
	go func() {
		code, _, _, err := r.try("GET", fmt.Sprintf("/state?after=%d", now), nil)
		if err != nil {
			t.Error(err)
		}
		waits <- code
	}()
	for end := time.Now().Add(patience); len(r.server.waiters) == 0 && time.Now().Before(end); {
		time.Sleep(time.Millisecond)
	}
	r.stop()
	select {
	case err := <-r.end:
		if err != nil {
			t.Errorf("ended with %v", err)
		}
	case <-time.After(patience):
		t.Fatal("does not end")
	}
	if code := <-waits; code != 200 {
		t.Errorf("a page that waited was answered %d", code)
	}
	if _, err := net.Dial("tcp", r.host()); err == nil {
		t.Error("still listens")
	}
}
