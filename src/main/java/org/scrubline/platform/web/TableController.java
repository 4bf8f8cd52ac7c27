package org.scrubline.platform.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.core.io.ClassPathResource;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.servlet.resource.ResourceUrlProvider;
import tools.jackson.databind.json.JsonMapper;

/** The application at the operating table: one page without data that a device keeps, and what keeps it current. */
@Controller
@EnableConfigurationProperties(TableSettings.class)
class TableController {

    /** Raised whenever a page of before could not speak with this server any more. */
    static final int SHELL = 1;

    private static final MediaType SCRIPT = MediaType.parseMediaType("text/javascript;charset=UTF-8");
    private static final List<String> STYLES = List.of(
            "/css/tokens.css",
            "/css/scrubline.css",
            "/css/components.css",
            "/css/sheet.css",
            "/css/record.css",
            "/css/charts.css",
            "/css/print.css");

    private static final List<String> PAGE = List.of(
            "templates/platform/at-the-table.html",
            "templates/layout/page.html",
            "messages/platform.properties",
            "messages/layout.properties");

    private final TableSettings settings;
    private final ScriptFolder scripts;
    private final ResourceUrlProvider urls;
    private final JsonMapper json = JsonMapper.builder().build();

    TableController(TableSettings settings, ScriptFolder scripts, ResourceUrlProvider urls) {
        this.settings = settings;
        this.scripts = scripts;
        this.urls = urls;
    }

    /**
     * Who is logged in.
     *
     * @param scrubline always "session"
     * @param person null while nobody is
     * @param header name of the header the token goes into; null while nobody is logged in
     * @param oldest oldest page that may still be used
     * @param off whether work without a network is withdrawn
     */
    record Session(
            String scrubline,
            @Nullable UUID person,
            @Nullable String header,
            @Nullable String token,
            int oldest,
            boolean off) {}

    @GetMapping("/at-the-table")
    String page(HttpServletResponse response) {
        if (!settings.enabled()) {
            throw new NotFound();
        }
        response.setHeader("X-Scrubline-Shell", String.valueOf(SHELL));
        return "platform/at-the-table";
    }

    @GetMapping("/at-the-table/session")
    @ResponseBody
    Session session(@AuthenticationPrincipal @Nullable Object principal, CsrfToken token) {
        boolean off = !settings.enabled();
        return principal instanceof SignedIn who
                ? new Session(
                        "session", who.personId(), token.getHeaderName(), token.getToken(), settings.oldestShell(), off)
                : new Session("session", null, null, null, settings.oldestShell(), off);
    }

    @GetMapping("/service-worker.js")
    ResponseEntity<String> worker() {
        String source = settings.enabled() ? "worker.js" : "worker-off.js";
        return ResponseEntity.ok()
                .contentType(SCRIPT)
                .cacheControl(CacheControl.noCache())
                .body("const SHELL = " + json.writeValueAsString(shell()) + ";\n" + text(source));
    }

    @GetMapping("/manifest.webmanifest")
    ResponseEntity<String> manifest() {
        return ResponseEntity.ok()
                .contentType(MediaType.parseMediaType("application/manifest+json"))
                .body(text("manifest.json"));
    }

    private Map<String, Object> shell() {
        List<String> files = new ArrayList<>(STYLES);
        files.addAll(scripts.files());
        files.add("/mark.svg");
        List<String> addresses = files.stream()
                .map(file -> Optional.ofNullable(urls.getForLookupPath(file)).orElse(file))
                .toList();
        return Map.of("number", SHELL, "version", version(addresses), "files", addresses);
    }

    /** Changes with anything the page is made of, so that a device fetches it anew. */
    private static String version(List<String> addresses) {
        StringBuilder made = new StringBuilder(String.join("\n", addresses));
        PAGE.forEach(part -> made.append(read(part)));
        return CanonicalJson.sha256(made.toString());
    }

    private static String text(String name) {
        return read("at-the-table/" + name);
    }

    private static String read(String resource) {
        try {
            return new ClassPathResource(resource).getContentAsString(StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
