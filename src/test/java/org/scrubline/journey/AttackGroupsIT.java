package org.scrubline.journey;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.browser.Chromium;

/** Groups of attacks at the wire of the running server; docs/attack-groups.md says which test runs which. */
class AttackGroupsIT {

    private static final ServerProcess SERVER = DemoServer.shared();
    private static final URI ADDRESS = URI.create(SERVER.address());
    private static final Pattern CODE = Pattern.compile("\\b((?:[A-Z2-9]{5}-){3}[A-Z2-9]{5})\\b");
    private static final Duration MAIL_PATIENCE = Duration.ofSeconds(60);

    @ParameterizedTest
    @ValueSource(
            strings = {"elsewhere.invalid", "127.0.0.1", "localhost.elsewhere.invalid", "localhost@elsewhere.invalid"})
    void aHostNameThatIsNotOurOwnIsAnsweredWithAPlainRefusal(String host) {
        RawRequest.Answer answer = RawRequest.get(ADDRESS, "/login", Map.of("Host", host));
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.headers() + answer.body()).doesNotContain("elsewhere").doesNotContain("Tomcat");
    }

    @Test
    void healthAnswersWhoeverAsksByNumber() {
        assertThat(RawRequest.get(ADDRESS, "/actuator/health", Map.of("Host", "127.0.0.1", "Accept", "*/*"))
                        .status())
                .isEqualTo(200);
    }

    /** The code itself is tested where it is made; here, what a request can do to the address in front of it. */
    @Test
    void noHeaderOfARequestChangesWhereAMailLeads() throws Exception {
        String address = "tolvarin@hospital.example";
        Visitor owner = Visitor.loggedIn(SERVER, "tolvarin");
        owner.get("/account/address");
        owner.post("/account/address", Map.of("address", address));
        owner.get("/account/address");
        owner.post("/account/address/confirm", Map.of("code", code(mail(address, 1))));
        Visitor stranger = new Visitor(SERVER);
        stranger.get("/login/help");
        HttpResponse<String> asked = stranger.post(
                "/login/help",
                Map.of("name", address),
                Map.of(
                        "X-Forwarded-Host", "elsewhere.invalid",
                        "X-Forwarded-Proto", "http",
                        "X-Forwarded-Prefix", "/elsewhere",
                        "Forwarded", "host=elsewhere.invalid",
                        "X-Original-Host", "elsewhere.invalid"));
        assertThat(asked.headers().firstValue("location").orElseThrow()).doesNotContain("elsewhere");
        assertThat(mail(address, 2))
                .contains(DemoServer.ORIGIN + "/login/new-password#")
                .doesNotContain("elsewhere");
        assertThat(SERVER.log()).doesNotContain(code(mail(address, 2)));
    }

    private static String mail(String address, int count) throws InterruptedException {
        long end = System.nanoTime() + MAIL_PATIENCE.toNanos();
        while (System.nanoTime() < end) {
            List<String> mails = DemoServer.MAIL.received().stream()
                    .filter(mail -> mail.contains("RCPT TO:<" + address + ">"))
                    .toList();
            if (mails.size() >= count) {
                return mails.get(count - 1);
            }
            Thread.sleep(100);
        }
        throw new AssertionError("mail " + count + " to " + address + " did not come");
    }

    private static String code(String mail) {
        Matcher matcher = CODE.matcher(mail);
        assertThat(matcher.find()).as(mail).isTrue();
        return matcher.group(1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/login%0d%0aSet-Cookie:%20a=b",
                "/login?continue=%0d%0aLocation:%20//elsewhere.invalid",
                "//elsewhere.invalid/%2f..",
                "/%5celsewhere.invalid",
                "/https:elsewhere.invalid",
                "/cohort/..//elsewhere.invalid"
            })
    void noPathLeadsToAnotherSiteOrWritesAHeader(String path) {
        RawRequest.Answer answer = RawRequest.get(ADDRESS, path, Map.of());
        assertThat(answer.status()).isLessThan(500);
        assertThat(answer.headers().lines().map(line -> line.toLowerCase(Locale.ROOT)))
                .noneMatch(line -> line.startsWith("set-cookie: a=b"))
                .noneMatch(line -> line.startsWith("location:") && line.contains("elsewhere"));
    }

    @Test
    void thePageAskedForBeforeTheLogInIsOneOfOurs() {
        Visitor visitor = new Visitor(SERVER);
        visitor.get("/rubrics?to=//elsewhere.invalid");
        visitor.get("/login");
        HttpResponse<String> entered =
                visitor.post("/login", Map.of("username", "hallinor", "password", DemoServer.PASSWORD));
        URI to = URI.create(entered.headers().firstValue("location").orElseThrow());
        assertThat(to.getHost()).isIn(null, "localhost");
        assertThat(to.getPath()).isIn("/", "/rubrics");
    }

    @Test
    void bodiesThatNeverEndKeepNobodyElseOut() throws IOException {
        List<Socket> stalled = new ArrayList<>();
        try {
            for (int i = 0; i < 60; i++) {
                Socket socket = new Socket(ADDRESS.getHost(), ADDRESS.getPort());
                socket.getOutputStream()
                        .write(("POST /login HTTP/1.1\r\nHost: localhost\r\nContent-Length: 200000\r\n"
                                        + "Content-Type: application/x-www-form-urlencoded\r\n\r\na=")
                                .getBytes(StandardCharsets.US_ASCII));
                socket.getOutputStream().flush();
                stalled.add(socket);
            }
            long before = System.nanoTime();
            assertThat(new Visitor(SERVER).get("/login").statusCode()).isEqualTo(200);
            assertThat(Duration.ofNanos(System.nanoTime() - before)).isLessThan(Duration.ofSeconds(10));
        } finally {
            for (Socket socket : stalled) {
                socket.close();
            }
        }
    }

    @Test
    void manyPartsAndManyFieldsAreRefusedBeforeAPageSeesThem() {
        Visitor trainee = Visitor.loggedIn(SERVER, "hallinor");
        String parts = IntStream.range(0, 10_000)
                .mapToObj(i -> "--x\r\nContent-Disposition: form-data; name=\"f" + i + "\"\r\n\r\n1\r\n")
                .collect(Collectors.joining());
        quiet(trainee.send("POST", "/cases/new", "multipart/form-data; boundary=x", parts + "--x--\r\n"), 400, 499);
        String fields = IntStream.range(0, 20_000).mapToObj(i -> "f" + i + "=1").collect(Collectors.joining("&"));
        quiet(trainee.send("POST", "/cases/new", "application/x-www-form-urlencoded", fields), 400, 499);
    }

    @Test
    void whatSomebodyTypesForgesNoLineOfTheLog() {
        String mark = "forged-" + System.nanoTime();
        for (String name : List.of(
                "x\r\n" + mark + " INFO logged in",
                mark + " ${jndi:ldap://elsewhere.invalid/a}",
                "\u001b[2J" + mark,
                "x\u2028" + mark + " INFO")) {
            Visitor visitor = new Visitor(SERVER);
            visitor.get("/login");
            quiet(visitor.post("/login", Map.of("username", name, "password", name)), 300, 499);
            visitor.get("/login/help");
            quiet(visitor.post("/login/help", Map.of("name", name)), 300, 499);
        }
        assertThat(SERVER.log()).doesNotContain(mark);
    }

    @Test
    void nothingOfARecordIsBackAfterLogOutAndNothingPrivateHasAMarkACacheCouldAskBy() {
        Visitor trainee = Visitor.loggedIn(SERVER, "hallinor");
        for (String path : List.of("/my-cases", "/feedback", "/progress", "/account/keys")) {
            HttpResponse<String> answer = trainee.get(path);
            assertThat(answer.headers().firstValue("etag")).as(path).isEmpty();
            assertThat(answer.headers().firstValue("last-modified")).as(path).isEmpty();
        }
        try (BrowserContext context = Chromium.browser().newContext()) {
            Page page = context.newPage();
            page.navigate(SERVER.address() + "/login");
            page.locator("input[name=username]").fill("hallinor");
            page.locator("input[name=password]").fill(DemoServer.PASSWORD);
            page.locator("main button[type=submit]").first().click();
            page.waitForURL(url -> !url.endsWith("/login"));
            page.navigate(SERVER.address() + "/my-cases");
            assertThat(page.locator(".who").count()).isEqualTo(1);
            page.locator("form[action$='/logout'] button").click();
            page.waitForURL("**/login?left");
            page.goBack();
            page.waitForLoadState();
            assertThat(page.locator(".who").count()).isZero();
            assertThat(page.url()).endsWith("/login");
        }
    }

    @ParameterizedTest
    @CsvSource({
        "GET,/nowhere,302",
        "GET,/login?x=%00,400",
        "GET,/rubrics%2f,400",
        "TRACE,/login,400|405",
        "BREW,/login,400|405",
        "PUT,/login,403"
    })
    void noRefusalTellsWhatTheServerIsMadeOf(String method, String path, String status) {
        RawRequest.Answer answer = RawRequest.send(ADDRESS, method, path, Map.of());
        assertThat(String.valueOf(answer.status())).matches(status);
        bare(answer.headers() + answer.body());
    }

    @Test
    void neitherDoesARequestTheServerCannotEvenRead() {
        for (Map<String, String> headers : List.of(
                Map.of("X-Long", "x".repeat(60_000)),
                Map.of("Content-Length", "-1"),
                Map.of("Expect", "nonsense"),
                Map.of("Range", "bytes=nonsense"),
                Map.of("Cookie", "SCRUBLINE=" + "%00".repeat(100)))) {
            RawRequest.Answer answer = RawRequest.get(ADDRESS, "/login", headers);
            assertThat(answer.status()).isLessThan(500);
            bare(answer.headers() + answer.body());
        }
        RawRequest.Answer answer = RawRequest.get(ADDRESS, "/" + "x".repeat(60_000), Map.of());
        assertThat(answer.status()).isLessThan(500);
        bare(answer.headers() + answer.body());
    }

    @Test
    void theWorkerServesThisSiteAloneAndNoForeignOneMayReadAnything() {
        String origin = "https://elsewhere.invalid";
        for (String path : List.of("/service-worker.js", "/at-the-table/session", "/login", "/rubrics")) {
            for (String from : List.of(origin, "null")) {
                RawRequest.Answer answer = RawRequest.get(ADDRESS, path, Map.of("Origin", from, "Cookie", "a=b"));
                assertThat(answer.headers().toLowerCase(Locale.ROOT))
                        .as(path)
                        .doesNotContain("access-control-allow")
                        .doesNotContain("service-worker-allowed");
            }
        }
        assertThat(new Visitor(SERVER)
                        .get("/login")
                        .headers()
                        .firstValue("content-security-policy")
                        .orElseThrow())
                .contains("default-src 'none'")
                .doesNotContain(URLEncoder.encode(origin, StandardCharsets.UTF_8));
    }

    private static void quiet(HttpResponse<String> answer, int least, int most) {
        assertThat(answer.statusCode()).isBetween(least, most);
        bare(answer.body());
    }

    private static void bare(String text) {
        assertThat(text)
                .doesNotContain("Exception")
                .doesNotContain("org.springframework")
                .doesNotContain("org.apache")
                .doesNotContain("Tomcat")
                .doesNotContain("PostgreSQL")
                .doesNotContainPattern("\\bat [a-z]+\\.[a-z.]+\\([A-Z]");
    }
}
