package preview

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"standclear/render/html"
)

// patience ends a wait that would not end: no measure.
const patience = 30 * time.Second

// quick are the limits of a test that waits for them.
var quick = limits{
	poll: 5 * time.Millisecond, settle: 20 * time.Millisecond,
	hold: 300 * time.Millisecond, header: patience, write: 2 * patience, idle: patience,
	conns: 8, waiting: 3, reading: 2,
}

// plainRead is a project whose every word is a sheet; "bad" is a problem, and so is no word, "panic" a fault.
func plainRead(_ context.Context, src []byte, publish func(Model)) []string {
	if len(src) == 0 {
		return []string{"deck.yaml:1:1: empty"}
	}
	var m Model
	m.Checks = html.Page{Title: "<b>HOUSE</b>", Verdict: "1 ok", Rows: []html.Row{{Cells: []string{"shear", "OK"}, Class: "ok"}}}
	for i, word := range strings.Fields(string(src)) {
		switch word {
		case "bad":
			return []string{fmt.Sprintf("deck.yaml:1:%d: <script>: bad", i+1)}
		case "panic":
			panic("a number is missing")
		}
		m.Sheets = append(m.Sheets, Entry{ID: word, Title: "SHEET " + word})
	}
	m.Draw = func(id string) ([]byte, error) {
		if id == "torn" {
			panic("no outline")
		}
		return []byte("<svg>" + id + "</svg>"), nil
	}
	publish(m)
	return nil
}

// running is a server under test.
type running struct {
	*testing.T
	server    *Server
	file, url string
	stop      context.CancelFunc
	end       chan error
}

func start(t *testing.T, text string, read Read, l limits) *running {
	t.Helper()
	r := &running{T: t, file: filepath.Join(t.TempDir(), "deck.yaml"), end: make(chan error, 1)}
	r.save(text)
	s := newServer(r.file, read, l)
	url, err := s.Listen()
	if err != nil {
		t.Fatal(err)
	}
	r.server = s
	r.url = strings.TrimSuffix(url, "/")
	ctx, stop := context.WithCancel(context.Background())
	r.stop = stop
	go func() { r.end <- s.Run(ctx) }()
	t.Cleanup(func() {
		stop()
		http.DefaultClient.CloseIdleConnections()
	})
	return r
}

func (r *running) save(text string) {
	r.Helper()
	if err := os.WriteFile(r.file, []byte(text), 0o666); err != nil {
		r.Fatal(err)
	}
}

// ask sends a request and returns status, head and body.
func (r *running) ask(method, path string, change func(*http.Request)) (int, http.Header, string) {
	r.Helper()
	code, h, body, err := r.try(method, path, change)
	if err != nil {
		r.Fatal(err)
	}
	return code, h, body
}

func (r *running) try(method, path string, change func(*http.Request)) (int, http.Header, string, error) {
	ctx, done := context.WithTimeout(context.Background(), patience)
	defer done()
	q, err := http.NewRequestWithContext(ctx, method, r.url+path, nil)
	if err != nil {
		return 0, nil, "", err
	}
	if change != nil {
		change(q)
	}
	a, err := http.DefaultTransport.RoundTrip(q) // follows no redirection
	if err != nil {
		return 0, nil, "", err
	}
	defer a.Body.Close()
	b, err := io.ReadAll(a.Body)
	return a.StatusCode, a.Header, string(b), err
}

func (r *running) host() string { return strings.TrimPrefix(r.url, "http://") }

// dial opens a bare connection.
func (r *running) dial() net.Conn {
	r.Helper()
	c, err := net.Dial("tcp", r.host())
	if err != nil {
		r.Fatal(err)
	}
	r.Cleanup(func() { c.Close() })
	if err := c.SetDeadline(time.Now().Add(patience)); err != nil {
		r.Fatal(err)
	}
	return c
}

// until waits for a state.
func (r *running) until(what string, ok func(s state) bool) state {
	r.Helper()
	var s state
	for end := time.Now().Add(patience); time.Now().Before(end); {
		code, _, body := r.ask("GET", fmt.Sprintf("/state?after=%d", s.Number), nil)
		if code != 200 {
			r.Fatalf("state: %d %s", code, body)
		}
		if err := json.Unmarshal([]byte(body), &s); err != nil {
			r.Fatal(err)
		}
		if ok(s) {
			return s
		}
	}
	r.Fatalf("%s: never; the last state is %+v", what, s)
	return s
}

func good(s state) bool { return s.Drawing > 0 && len(s.Problems) == 0 }

func TestOnlyThisMachine(t *testing.T) {
	s := New("deck.yaml", plainRead)
	url, err := s.Listen()
	if err != nil {
		t.Fatal(err)
	}
	defer s.ln.Close()
	at := s.ln.Addr().(*net.TCPAddr)
	if !at.IP.IsLoopback() || at.Port == 0 {
		t.Errorf("listens at %v", at)
	}
	if want := fmt.Sprintf("http://127.0.0.1:%d/", at.Port); url != want {
		t.Errorf("says %s, want %s", url, want)
	}
}

func TestWhoIsAnswered(t *testing.T) {
	r := start(t, "A-1", plainRead, usual)
	r.until("a drawing", good)
	port := r.url[strings.LastIndex(r.url, ":"):]
	head := func(pairs ...string) func(*http.Request) {
		return func(q *http.Request) {
			for i := 0; i < len(pairs); i += 2 {
				q.Header.Add(pairs[i], pairs[i+1])
			}
		}
	}
	host := func(h string) func(*http.Request) { return func(q *http.Request) { q.Host = h } }
	tests := []struct {
		name, method, path string
		change             func(*http.Request)
		want               int
	}{
		{"page", "GET", "/", nil, 200},
		{"head of the page", "HEAD", "/", nil, 200},
		{"by name", "GET", "/", host("localhost" + port), 200},
		{"another name turned to this machine", "GET", "/", host("deck.example" + port), 403},
		{"another name, state", "GET", "/state?after=0", host("deck.example" + port), 403},
		{"another name, sheet", "GET", "/sheet/A-1?drawing=1", host("deck.example" + port), 403},
		{"name without port", "GET", "/", host("127.0.0.1"), 403},
		{"another port", "GET", "/", host("127.0.0.1:1"), 403},
		{"no name", "GET", "/", host(" "), 403},
		{"own origin", "GET", "/state?after=0", head("Origin", r.url), 200},
		{"another origin", "GET", "/state?after=0", head("Origin", "http://deck.example"), 403},
		{"another port as origin", "GET", "/state?after=0", head("Origin", "http://127.0.0.1:1"), 403},
		{"https of the same", "GET", "/state?after=0", head("Origin", "https"+strings.TrimPrefix(r.url, "http")), 403},
		{"no origin", "GET", "/state?after=0", head("Origin", "null"), 403},
		{"two origins", "GET", "/state?after=0", head("Origin", r.url, "Origin", "http://deck.example"), 403},
		{"picture on another page", "GET", "/sheet/A-1?drawing=1", head("Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "no-cors", "Sec-Fetch-Dest", "image"), 403},
		{"frame on another page", "GET", "/", head("Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "navigate", "Sec-Fetch-Dest", "iframe"), 403},
		{"other server of this machine", "GET", "/page.js", head("Sec-Fetch-Site", "same-site", "Sec-Fetch-Mode", "no-cors"), 403},
		{"link followed", "GET", "/", head("Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "navigate", "Sec-Fetch-Dest", "document"), 200},
		{"post", "POST", "/", nil, 405},
		{"put", "PUT", "/sheet/A-1", nil, 405},
		{"delete", "DELETE", "/state", nil, 405},
		{"options", "OPTIONS", "/", nil, 405},
		{"sheet", "GET", "/sheet/A-1?drawing=1", nil, 200},
		{"sheet of another state", "GET", "/sheet/A-1?drawing=7", nil, 409},
		{"sheet of no state", "GET", "/sheet/A-1", nil, 400},
		{"no such sheet", "GET", "/sheet/A-2?drawing=1", nil, 404},
		{"state after nothing", "GET", "/state", nil, 400},
		{"no such path", "GET", "/deck.yaml", nil, 404},
		{"folder of the program", "GET", "/page/", nil, 404},
		{"up by escapes", "GET", "/sheet/..%2f..%2f..%2fetc%2fpasswd?drawing=1", nil, 404},
		{"up by backslashes", "GET", `/sheet/..%5c..%5cetc%5cpasswd?drawing=1`, nil, 404},
		{"up in an escaped path", "GET", "/%2e%2e/%2e%2e/etc/passwd", nil, 404},
		{"a path of the machine", "GET", "/etc/passwd", nil, 404},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			code, h, body := r.ask(tt.method, tt.path, tt.change)
			if code != tt.want {
				t.Fatalf("answered %d %s, want %d", code, body, tt.want)
			}
			if strings.Contains(body, "root:") {
				t.Error("a file of the machine was sent")
			}
			if p := h.Get("Content-Security-Policy"); !strings.HasPrefix(p, "default-src 'none'; script-src 'self'; connect-src 'self'; style-src 'self' ") || strings.Contains(p, "unsafe-inline") || strings.Contains(p, "unsafe-eval") || strings.Contains(p, "*") || !strings.Contains(p, "frame-ancestors 'none'") {
				t.Errorf("policy %q", p)
			}
			for k, v := range map[string]string{"X-Content-Type-Options": "nosniff", "Cache-Control": "no-store", "Cross-Origin-Resource-Policy": "same-origin", "Referrer-Policy": "no-referrer"} {
				if h.Get(k) != v {
					t.Errorf("%s: %q, want %q", k, h.Get(k), v)
				}
			}
			if a := h.Get("Access-Control-Allow-Origin"); a != "" {
				t.Errorf("another page may read this: %q", a)
			}
		})
	}
}

// What stands in a project file reaches the page as a text of JSON and never as markup.
func TestTextsAreNotMarkup(t *testing.T) {
	r := start(t, "A-1", plainRead, quick)
	r.until("a drawing", good)
	r.save("A-1 bad")
	r.until("the problem", func(s state) bool {
		return len(s.Problems) == 1 && s.Problems[0] == "deck.yaml:1:2: <script>: bad" && s.Title == "<b>HOUSE</b>"
	})
	_, h, body := r.ask("GET", "/state?after=0", nil)
	if strings.ContainsAny(body, "<>") || h.Get("Content-Type") != "application/json" {
		t.Errorf("%s: %s", h.Get("Content-Type"), body)
	}
}
