package journey

import "testing"

// kill ends the server as a power cut does.
func (s *Server) kill() {
	s.t.Helper()
	if err := s.process.Kill(); err != nil {
		s.t.Fatal(err)
	}
	<-s.ended
	s.process = nil
}

// Server and phone lose their power at the same moment. The phone comes back alone, saves one edit, then the server is
// there again: it gets that edit and nothing else.
func TestPowerCutOfPhoneAndServer(t *testing.T) {
	in := words(t)
	server := StartServer(t)
	browser := OpenBrowser(t)
	p := browser.Open(server.URL())
	p.installed()
	p.firstAnswers()
	p.onServer(server, `"mass_kg":72`)
	p.Eventually("everything to be on the server", func() bool { return len(server.ops(t)) >= 7 })
	p.See("last synced")
	p.NotSee("not yet on the server") // the phone knows it too
	before := len(server.ops(t))

	p.Allow(offline)
	server.kill()
	browser.Kill()
	browser.Restart()
	again := browser.Open(server.URL())
	again.Allow(offline)
	again.number(in["side.front"])
	again.setUp()
	again.holds(in["field.rider"], "72")
	again.edit(in["field.rider"], "74.5")
	again.See("1 not yet on the server")

	server.Start()
	again.Online()
	again.onServer(server, `"mass_kg":74.5`)
	again.NotSee("not yet on the server")
	if after := len(server.ops(t)); after != before+1 {
		t.Errorf("the server got %d new ops, want exactly one", after-before)
	}
}
