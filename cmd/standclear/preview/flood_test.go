package preview

import (
	"context"
	"fmt"
	"io"
	"net"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"standclear/render/html"
)

// A client that sends its request a byte at a time is cut off, by head or by body, and its place is free again.
func TestTrickle(t *testing.T) {
	l := quick
	l.header = 300 * time.Millisecond
	r := start(t, "A-1", plainRead, l)
	r.until("a drawing", good)
	var all sync.WaitGroup
	for i := range 3 * l.conns {
		head := []string{"GET / HTTP/1.1\r\nX: ", "POST / HTTP/1.1\r\nHost: " + r.host() + "\r\nContent-Length: 100000\r\n\r\n", "POST / HTTP/1.1\r\nHost: " + r.host() + "\r\nTransfer-Encoding: chunked\r\n\r\n186a0\r\n"}[i%3]
		c := r.dial()
		all.Go(func() {
			if _, err := io.WriteString(c, head); err != nil {
				return
			}
			for {
				if _, err := io.WriteString(c, "a"); err != nil {
					if e, ok := err.(net.Error); ok && e.Timeout() {
						t.Errorf("client %d was never cut off", i)
					}
					return
				}
				time.Sleep(20 * time.Millisecond)
			}
		})
	}
	all.Wait()
	if code, _, _ := r.ask("GET", "/", nil); code != 200 {
		t.Errorf("the page afterwards: %d", code)
	}
}

// Hundreds ask for everything while the file is saved over and over: no more than the places there are is served at
// once, what was drawn before is let go, and the page is answered afterwards.
func TestFloodWhileDrawing(t *testing.T) {
	const large = 1 << 20 // bytes of a sheet
	read := func(ctx context.Context, src []byte, publish func(Model)) []string {
		var m Model
		m.Checks = html.Page{Title: "HOUSE", Verdict: string(src)}
		m.Sheets = []Entry{{ID: "A-1"}, {ID: "A-2"}}
		m.Draw = func(id string) ([]byte, error) {
			time.Sleep(5 * time.Millisecond)
			return []byte(strings.Repeat(id[2:], large)), nil
		}
		publish(m)
		return nil
	}
	l := quick
	l.conns, l.waiting = 16, 4
	r := start(t, "0", read, l)
	r.until("a drawing", good)
	runtime.GC()
	before := heap()
	flooding, stop := context.WithCancel(context.Background())
	var all sync.WaitGroup
	for i := range 200 {
		all.Go(func() {
			for n := 0; flooding.Err() == nil; n++ {
				path := []string{"/", "/state?after=0", "/sheet/A-1?drawing=%d", "/sheet/A-2?drawing=%d", "/state?after=%d", "/nothing"}[(i+n)%6]
				if strings.Contains(path, "%d") {
					path = fmt.Sprintf(path, 1+n)
				}
				q := "GET " + path + " HTTP/1.1\r\nHost: " + r.host() + "\r\n\r\n"
				c, err := net.Dial("tcp", r.host())
				if err != nil {
					continue // no more are taken
				}
				if err := c.SetDeadline(time.Now().Add(300 * time.Millisecond)); err == nil {
					_, _ = io.WriteString(c, q)
					_, _ = io.Copy(io.Discard, io.LimitReader(c, 1<<14)) // leaves in the middle of a sheet
				}
				c.Close()
			}
		})
	}
	served := 0
	for i := range 40 {
		r.save(fmt.Sprint(i + 1))
		time.Sleep(3 * quick.poll)
		served = max(served, strings.Count(stacks(), "net/http.(*conn).serve("))
	}
	stop()
	all.Wait()
	if served > l.conns+2 { // one may be going while the next comes
		t.Errorf("%d requests served at once, %d are allowed", served, l.conns)
	}
	if served == 0 {
		t.Error("no request was seen: the flood is none")
	}
	for end := time.Now().Add(patience); len(r.server.waiters) > 0 && time.Now().Before(end); {
		time.Sleep(10 * time.Millisecond) // who has left is noticed
	}
	s := r.until("the last state", func(s state) bool { return s.Verdict == "40" })
	if code, _, body := r.ask("GET", fmt.Sprintf("/sheet/A-2?drawing=%d", s.Drawing), nil); code != 200 || len(body) != large {
		t.Errorf("a sheet afterwards: %d, %d bytes", code, len(body))
	}
	for end := time.Now().Add(patience); strings.Count(stacks(), "net/http.(*conn).serve(") > l.conns && time.Now().Before(end); {
		time.Sleep(10 * time.Millisecond)
	}
	runtime.GC()
	if grown := heap() - before; grown > 20*large { // forty drawings have been shown, of two sheets each
		t.Errorf("%d MB are held afterwards", grown>>20)
	}
}

// heap is what is held, in bytes.
func heap() int64 {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int64(m.HeapAlloc)
}

// stacks is what every goroutine is doing.
func stacks() string {
	b := make([]byte, 8<<20)
	return string(b[:runtime.Stack(b, true)])
}
