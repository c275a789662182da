package journey

import (
	"encoding/json"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rimside/store/oplog"
)

// wipe takes the server's data away, as if its disk had died, and starts it anew.
func (s *Server) wipe() {
	s.t.Helper()
	s.kill()
	empty(s.t, s.data)
	s.Start()
}

// ops are the texts of all ops that the server holds, in the order of arrival.
func (s *Server) ops(t *testing.T) []string {
	t.Helper()
	var texts []string
	for since, more := int64(0), true; more; {
		var page struct {
			Ops  []json.RawMessage
			Next int64
			More bool
		}
		response, err := http.Get(s.URL() + "api/ops?since=" + strconv.FormatInt(since, 10))
		if err != nil {
			t.Fatal(err)
		}
		err = json.NewDecoder(response.Body).Decode(&page)
		response.Body.Close()
		if err != nil {
			t.Fatal(err)
		}
		for _, raw := range page.Ops {
			texts = append(texts, string(raw))
		}
		since, more = page.Next, page.More
	}
	return texts
}

func parsed(t *testing.T, text string) oplog.Op {
	t.Helper()
	op, fault := oplog.Parse([]byte(text))
	if fault != nil {
		t.Fatalf("%s: %v", text, fault)
	}
	return op
}

// idsOf lists the ids of ops, sorted.
func idsOf(t *testing.T, texts []string) string {
	t.Helper()
	var ids []string
	for _, text := range texts {
		ids = append(ids, parsed(t, text).ID)
	}
	slices.Sort(ids)
	return strings.Join(ids, " ")
}
