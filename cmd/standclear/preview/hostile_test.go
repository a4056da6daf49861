package preview

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"syscall"
	"testing"
)

// raw sends bytes as they are on a connection of their own and returns the answer.
func (r *running) raw(request string) (*http.Response, string) {
	r.Helper()
	a, body, err := r.tryRaw(request)
	if err != nil {
		r.Fatalf("%.80q: %v", request, err)
	}
	return a, body
}

func (r *running) tryRaw(request string) (*http.Response, string, error) {
	r.Helper()
	c := r.dial()
	defer c.Close()
	go func() { _, _ = io.WriteString(c, request) }() // an answer may come before the end
	method, _, _ := strings.Cut(request, " ")
	a, err := http.ReadResponse(bufio.NewReader(c), &http.Request{Method: method})
	if err != nil {
		return nil, "", err
	}
	defer a.Body.Close()
	b, err := io.ReadAll(a.Body)
	return a, string(b), err
}

// Whatever is asked, by whatever method: a name, an origin or a page of elsewhere is refused.
func TestElsewhereIsRefusedByEveryMethod(t *testing.T) {
	r := start(t, "A-1", plainRead, quick)
	r.until("a drawing", good)
	for _, method := range []string{"GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "BREW"} {
		for _, path := range []string{"/", "/page.js", "/page.css", "/state?after=0", "/sheet/A-1?drawing=1", "/nothing"} {
			for name, head := range map[string]string{
				"host":       "Host: deck.example\r\n",
				"no host":    "Host:\r\n",
				"origin":     "Host: " + r.host() + "\r\nOrigin: http://deck.example\r\n",
				"null":       "Host: " + r.host() + "\r\nOrigin: null\r\n",
				"other page": "Host: " + r.host() + "\r\nSec-Fetch-Site: cross-site\r\n",
			} {
				a, _ := r.raw(method + " " + path + " HTTP/1.1\r\n" + head + "Connection: close\r\nContent-Length: 0\r\n\r\n")
				if a.StatusCode != http.StatusForbidden || a.Header.Get("Access-Control-Allow-Origin") != "" {
					t.Errorf("%s %s, %s: %s %v", method, path, name, a.Status, a.Header)
				}
			}
		}
	}
	for _, request := range []string{
		"GET / HTTP/1.0\r\n\r\n", // no name at all
		"GET http://deck.example/ HTTP/1.1\r\nHost: " + r.host() + "\r\n\r\n", // the name in the line counts
	} {
		if a, _ := r.raw(request); a.StatusCode != http.StatusForbidden {
			t.Errorf("%q: %s", request, a.Status)
		}
	}
	for _, request := range []string{
		"GET / HTTP/1.1\r\nHost: " + r.host() + "\r\nHost: deck.example\r\n\r\n",
		"GET / HTTP/1.1\r\nHost: " + r.host() + "\r\nContent-Length: 4\r\nTransfer-Encoding: x\r\n\r\nabcd",
		"GET / HTTP/1.1\r\n\r\n",
		"GET  / HTTP/1.1\r\nHost: " + r.host() + "\r\n\r\n",
		"\x16\x03\x01\r\n\r\n",
	} {
		if a, _ := r.raw(request); a.StatusCode < 400 {
			t.Errorf("%q: %s", request, a.Status)
		}
	}
}

// A path leads to no file, however it is written, and to no other server.
func TestNoPathLeadsOut(t *testing.T) {
	r := start(t, "A-1 secret", plainRead, quick)
	r.until("a drawing", good)
	name := r.file[strings.LastIndex(r.file, "/")+1:]
	for _, path := range []string{
		"/../../../../etc/passwd", "/sheet/../../../../etc/passwd?drawing=1", "/sheet/..%2f..%2f..%2fetc%2fpasswd?drawing=1", "/%2e%2e/%2e%2e/etc/passwd",
		"/..%c0%af..%c0%afetc/passwd", `/..\..\etc\passwd`, "/sheet/%2e%2e/" + name + "?drawing=1", "/" + name, r.file, "//etc/passwd", "//deck.example/", "/\\deck.example/",
		"/page/page.html", "/page/../page/page.js", "/./page.js", "/page.js/", "/page.js%00.html", "/sheet/A-1%00?drawing=1", "/sheet/?drawing=1", "/sheet/A-1/x?drawing=1", "/sheet//A-1?drawing=1", "/state/../deck.yaml", "*",
	} {
		a, body := r.raw("GET " + path + " HTTP/1.1\r\nHost: " + r.host() + "\r\nConnection: close\r\n\r\n")
		if a.StatusCode < 300 || strings.Contains(body, "root:") || strings.Contains(body, "A-1 secret") {
			t.Errorf("%s: %s %.60q", path, a.Status, body)
		}
		if to := a.Header.Get("Location"); strings.HasPrefix(to, "//") || strings.Contains(to, "\\") || strings.Contains(strings.SplitN(to, "?", 2)[0], ":") {
			t.Errorf("%s leads to %q", path, to)
		}
	}
}

// What is too long is refused, and the next is answered.
func TestLongRequests(t *testing.T) {
	r := start(t, "A-1", plainRead, quick)
	r.until("a drawing", good)
	long := strings.Repeat("a", 40<<10)
	for name, request := range map[string]string{
		"path":          "GET /" + long + " HTTP/1.1\r\nHost: " + r.host() + "\r\n\r\n",
		"query":         "GET /state?after=" + long + " HTTP/1.1\r\nHost: " + r.host() + "\r\n\r\n",
		"host":          "GET / HTTP/1.1\r\nHost: " + long + "\r\n\r\n",
		"method":        long + " / HTTP/1.1\r\nHost: " + r.host() + "\r\n\r\n",
		"many headers":  "GET / HTTP/1.1\r\nHost: " + r.host() + "\r\n" + strings.Repeat("X: y\r\n", 8000) + "\r\n",
		"header's name": "GET / HTTP/1.1\r\nHost: " + r.host() + "\r\n" + long + ": y\r\n\r\n",
	} {
		a, _, err := r.tryRaw(request)
		if err != nil && !errors.Is(err, syscall.ECONNRESET) || a != nil && a.StatusCode < 400 { // cut off in the middle of it, or answered
			t.Errorf("%s: %v, %v", name, a, err)
		}
	}
	longest := "GET /sheet/" + strings.Repeat("a", 10<<10) + "?drawing=1 HTTP/1.1\r\nHost: " + r.host() + "\r\n\r\n"
	if a, body := r.raw(longest); a.StatusCode != http.StatusNotFound || len(body) > 100 {
		t.Errorf("a long name of a sheet: %s, %d bytes", a.Status, len(body))
	}
	for _, q := range []string{"after=99999999999999999999", "after=-1e9", "after=%00", "after=1;x", "after"} {
		if code, _, _ := r.ask("GET", "/state?"+q, nil); code != http.StatusBadRequest {
			t.Errorf("%s: %d", q, code)
		}
	}
	if code, _, _ := r.ask("GET", "/", nil); code != 200 {
		t.Errorf("the page after all that: %d", code)
	}
}

// FuzzAsked gives the server any request that can be read as one: it answers with the page, its parts, a state or a
// sheet, and only who asks by its own name from its own page; nothing of the file's text or of another file is sent.
func FuzzAsked(f *testing.F) {
	s := newServer("deck.yaml", plainRead, limits{waiting: 1})
	url, err := s.Listen()
	if err != nil {
		f.Fatal(err)
	}
	s.ln.Close() // its handler alone is asked
	ours := strings.TrimSuffix(strings.TrimPrefix(url, "http://"), "/")
	handler := s.handler()
	if problems := s.try(context.Background(), []byte("A-1 SECRET")); problems != nil {
		f.Fatal(problems)
	}
	for _, head := range []string{"GET / HTTP/1.1\r\nHost: @", "HEAD /page.js HTTP/1.1\r\nHost: @\r\nOrigin: http://@", "GET /state?after=0 HTTP/1.1\r\nHost: @", "GET /sheet/A-1?drawing=1 HTTP/1.1\r\nHost: @", "GET /sheet/..%2f HTTP/1.1\r\nHost: @",
		"POST / HTTP/1.1\r\nHost: @\r\nContent-Length: 3\r\n\r\nabc", "GET / HTTP/1.1\r\nHost: deck.example", "GET / HTTP/1.1\r\nHost: @\r\nOrigin: null", "GET / HTTP/1.1\r\nHost: @\r\nSec-Fetch-Site: cross-site\r\nSec-Fetch-Mode: navigate\r\nSec-Fetch-Dest: document",
		"GET http://deck.example/ HTTP/1.1\r\nHost: @", "OPTIONS * HTTP/1.1\r\nHost: @", "GET //deck.example/.. HTTP/1.1\r\nHost: @", "CONNECT @ HTTP/1.1\r\nHost: @"} {
		f.Add([]byte(head + "\r\n\r\n"))
	}
	f.Fuzz(func(t *testing.T, request []byte) {
		text := strings.ReplaceAll(string(request), "@", ours)
		q, err := http.ReadRequest(bufio.NewReader(strings.NewReader(text)))
		if err != nil {
			return
		}
		q.ContentLength = 0 // a recorder has no connection to put a time to
		a := httptest.NewRecorder()
		handler.ServeHTTP(a, q)
		told := fmt.Sprintf("%s %q, Host %q, Origin %q: %d", q.Method, q.URL, q.Host, q.Header["Origin"], a.Code)
		if a.Code == http.StatusOK {
			_, port, _ := strings.Cut(ours, ":")
			foreign := q.Host != ours && q.Host != "localhost:"+port || q.Method != "GET" && q.Method != "HEAD"
			for _, o := range q.Header.Values("Origin") {
				foreign = foreign || o != "http://"+q.Host
			}
			known := q.URL.Path == "/" || q.URL.Path == "/page.js" || q.URL.Path == "/page.css" || q.URL.Path == "/state" || q.URL.Path == "/sheet/A-1" || q.URL.Path == "/sheet/SECRET"
			if foreign || !known {
				t.Error(told)
			}
		}
		h := a.Result().Header
		if h.Get("Content-Security-Policy") != policy() || h.Get("X-Content-Type-Options") != "nosniff" || h.Get("Access-Control-Allow-Origin") != "" {
			t.Errorf("%s: %v", told, h)
		}
		if to := h.Get("Location"); strings.HasPrefix(to, "//") || strings.Contains(to, "://") || strings.ContainsAny(to, "\\\r\n") {
			t.Errorf("%s: leads to %q", told, to)
		}
		if body := a.Body.String(); strings.Contains(body, "A-1 SECRET") || a.Code != http.StatusOK && strings.ContainsAny(body, "<>") && !strings.Contains(h.Get("Content-Type"), "text/plain") && !strings.HasPrefix(body, "<a href=\"/") {
			t.Errorf("%s: %.100q", told, body)
		}
	})
}
