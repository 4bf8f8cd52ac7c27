package org.scrubline.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PageLayoutTests {

    private static final String BARE = "examples/page";

    @Test
    void anAnonymousPageHasNoNameNoNavigationAndNoWayOut() {
        String page = Rendering.template(BARE, Map.of("component", "Log in", "examples", List.of()));
        assertThat(page)
                .startsWith("<!DOCTYPE html>")
                .contains("<title>Log in – Scrubline</title>", "lang=\"en\"", "href=\"#content\"", "<main>")
                .doesNotContain("<nav", "/logout", "csrf-token", "class=\"caution\"");
    }

    @Test
    void aSignedInPageNamesThePersonAndMarksTheCurrentEntry() {
        assertThat(ScoreSheetSketch.page())
                .contains("Dr Ottilie Brannock", "supervisor", "Norrvale Filtration Surgery Programme")
                .contains("aria-current=\"page\">To score</a>", "<form method=\"post\" action=\"/logout\">")
                .contains("Invented programme", "Reference values for teaching; not clinical instructions.")
                .containsOnlyOnce("aria-current");
    }

    @Test
    void aMessageAfterAnActionIsAnnounced() {
        String page = Rendering.template(
                BARE, Map.of("component", "Cases", "examples", List.of(), "flash", "Case K7-204 is saved."));
        assertThat(page).contains("role=\"status\">Case K7-204 is saved.</div>");
    }

    @Test
    void scriptsFindTheRequestTokenAndCarryThePagesNonce() {
        Map<String, String> token = Map.of("token", "t0ken", "headerName", "X-CSRF-TOKEN");
        String page = Rendering.template(
                BARE, Map.of("component", "Cases", "examples", List.of(), "_csrf", token, "cspNonce", "n0nce"));
        assertThat(page)
                .contains("<meta name=\"csrf-token\" content=\"t0ken\"/>")
                .contains("<meta name=\"csrf-header\" content=\"X-CSRF-TOKEN\"/>")
                .contains("<script type=\"module\" src=\"/js/stepper.js\" nonce=\"n0nce\"></script>");
    }
}
