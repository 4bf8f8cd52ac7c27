package org.scrubline.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BadRequestsIT {

    private static final ServerProcess SERVER = DemoServer.shared();

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/nowhere",
                "/cases/nonsense",
                "/sheets/nonsense",
                "/signed/nonsense",
                "/rubrics/nonsense",
                "/progress/nonsense",
                "/actuator/env",
                "/actuator/beans",
                "/.git/config",
                "/WEB-INF/web.xml"
            })
    void whatIsNotThereIsNotFound(String path) {
        plain(Visitor.loggedIn(SERVER, "brannock").get(path), 404);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/cases/", "/sheets/", "/signed/", "/rubrics/", "/progress/"})
    void anIdNobodyKnowsIsNotFound(String path) {
        plain(Visitor.loggedIn(SERVER, "hallinor").get(path + UUID.randomUUID()), 404);
    }

    @Test
    void anUnknownIdAndAnotherPersonsPageGiveTheSameAnswer() {
        Visitor trainee = Visitor.loggedIn(SERVER, "hallinor");
        HttpResponse<String> unknown = trainee.get("/progress/" + UUID.randomUUID());
        HttpResponse<String> people = trainee.get("/people");
        assertThat(people.statusCode()).isEqualTo(404);
        assertThat(stripped(people.body())).isEqualTo(stripped(unknown.body()));
    }

    @ParameterizedTest
    @CsvSource({"PUT,/login", "DELETE,/rubrics", "PATCH,/my-cases"})
    void aMethodNoPageTakesIsRefused(String method, String path) {
        plain(Visitor.loggedIn(SERVER, "hallinor").send(method, path, "text/plain", ""), 405);
    }

    @Test
    void aFormOfAnotherSiteIsRefused() {
        plain(Visitor.loggedIn(SERVER, "hallinor").postWithoutToken("/cases/new"), 403);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/rubrics?q=%00", "/rubrics/%00", "/login?x=%ED%A0%80%00", "/rubrics/%2e%2e%2f", "/rubrics;a=b"})
    void charactersThatAreNoTextAreRefused(String path) {
        HttpResponse<String> answer = Visitor.loggedIn(SERVER, "hallinor").get(path);
        assertThat(answer.statusCode()).isBetween(400, 404);
        assertThat(answer.body()).doesNotContain("Exception").doesNotContain("org.springframework");
    }

    @Test
    void aNulInAFormFieldIsRefusedBeforeAnythingIsRead() {
        plain(
                Visitor.loggedIn(SERVER, "hallinor").post("/cases/new", Map.of("reference", "K7" + (char) 0 + "-204")),
                400);
    }

    @Test
    void aFormLargerThanAnyPageNeedsIsRefused() {
        HttpResponse<String> answer =
                Visitor.loggedIn(SERVER, "hallinor").post("/cases/new", Map.of("reference", "x".repeat(600_000)));
        assertThat(answer.statusCode()).isBetween(400, 499);
        assertThat(answer.body()).doesNotContain("Exception");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/my-cases", "/to-score", "/cohort", "/progress", "/people", "/rubrics", "/signed"})
    void aStrangerIsSentToLogIn(String path) {
        HttpResponse<String> answer = new Visitor(SERVER).get(path);
        assertThat(answer.statusCode()).isEqualTo(302);
        assertThat(answer.headers().firstValue("location"))
                .hasValueSatisfying(to -> assertThat(to).endsWith("/login"));
    }

    @Test
    void guessingIsSlowedAndTheOwnerStillGetsInLater() {
        Visitor guesser = new Visitor(SERVER);
        for (int i = 0; i < 6; i++) {
            guesser.get("/login");
            guesser.post("/login", Map.of("username", "oderlake", "password", "wrong guess number " + i));
        }
        HttpResponse<String> slowed =
                guesser.post("/login", Map.of("username", "oderlake", "password", DemoServer.PASSWORD));
        plain(slowed, 429);
        assertThat(slowed.headers().firstValue("retry-after")).isPresent();
    }

    @Test
    void aWrongNameAndAWrongPasswordReadTheSame() {
        Visitor visitor = new Visitor(SERVER);
        visitor.get("/login");
        String unknown = visitor.post("/login", Map.of("username", "nobody-here", "password", "x"))
                .headers()
                .firstValue("location")
                .orElseThrow();
        visitor.get("/login");
        String wrong = visitor.post("/login", Map.of("username", "callavere", "password", "x"))
                .headers()
                .firstValue("location")
                .orElseThrow();
        assertThat(unknown).isEqualTo(wrong).endsWith("/login?error");
    }

    /** A page of ours with the expected code: a heading, no trace of what it is built with. */
    private static void plain(HttpResponse<String> answer, int status) {
        assertThat(answer.statusCode()).isEqualTo(status);
        assertThat(answer.body()).contains("<h1>").doesNotContain("Exception").doesNotContain("Tomcat");
        assertThat(answer.headers().firstValue("content-security-policy")).isPresent();
    }

    private static String stripped(String page) {
        return page.replaceAll("nonce=\"[^\"]*\"", "")
                .replaceAll("name=\"csrf-token\" content=\"[^\"]*\"", "")
                .replaceAll("name=\"_csrf\" value=\"[^\"]*\"", "");
    }
}
