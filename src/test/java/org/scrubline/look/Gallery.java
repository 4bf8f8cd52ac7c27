package org.scrubline.look;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.scrubline.browser.Chromium;

/** Shows rendered pages in Chromium with the product's own style sheets and scripts, under its content policy. */
final class Gallery implements AutoCloseable {

    private static final String ORIGIN = "http://localhost:1";
    private static final String POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'";

    private final BrowserContext context;
    private final List<String> complaints = new ArrayList<>();
    private String markup = "";

    Gallery(int width, int height, ColorScheme scheme) {
        this(new Browser.NewContextOptions().setViewportSize(width, height).setColorScheme(scheme));
    }

    Gallery(Browser.NewContextOptions options) {
        context = Chromium.browser().newContext(options);
        context.route("**/*", this::answer);
    }

    /** A settled page with this markup. */
    Page show(String name, String html) {
        markup = html;
        Page page = context.newPage();
        page.onConsoleMessage(message -> {
            if (message.type().equals("error")) {
                complaints.add(message.text());
            }
        });
        page.navigate(ORIGIN + "/gallery/" + name);
        return page;
    }

    /** What the browser reported as errors, blocked content included. */
    List<String> complaints() {
        return List.copyOf(complaints);
    }

    @Override
    public void close() {
        context.close();
    }

    private void answer(Route route) {
        String path = URI.create(route.request().url()).getPath();
        if (path.startsWith("/gallery/")) {
            route.fulfill(new Route.FulfillOptions()
                    .setContentType("text/html; charset=utf-8")
                    .setHeaders(Map.of("Content-Security-Policy", POLICY, "Content-Type", "text/html; charset=utf-8"))
                    .setBody(markup));
            return;
        }
        try (InputStream file = Gallery.class.getResourceAsStream("/static" + path)) {
            if (file == null) {
                route.fulfill(new Route.FulfillOptions().setStatus(404));
                return;
            }
            route.fulfill(new Route.FulfillOptions().setContentType(type(path)).setBodyBytes(file.readAllBytes()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String type(String path) {
        if (path.endsWith(".css")) {
            return "text/css";
        }
        return path.endsWith(".js") ? "text/javascript" : "image/svg+xml";
    }
}
