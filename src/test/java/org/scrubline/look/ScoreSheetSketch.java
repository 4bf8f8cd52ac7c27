package org.scrubline.look;

import com.microsoft.playwright.Page;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A score sheet of 19 steps put together from the components' examples; a sketch for the browser tests. */
final class ScoreSheetSketch {

    private ScoreSheetSketch() {}

    /** The sheet on the product's layout, as a signed-in supervisor sees it. */
    static String page() {
        return Rendering.template(
                "examples/score-sheet",
                Map.of(
                        "shell", shell(),
                        "facts", first("facts").getOrDefault("facts", List.of()),
                        "bar", first("verdict-bar"),
                        "phases", phases()));
    }

    /** The sheet in a browser, only its current phase unfolded. */
    static Page folded(Gallery gallery) {
        return gallery.show("score-sheet", page());
    }

    /** The sheet in a browser with every phase unfolded. */
    static Page open(Gallery gallery) {
        Page page = folded(gallery);
        page.evaluate("() => document.querySelectorAll('details.phase').forEach(phase => phase.open = true)");
        return page;
    }

    private static List<@Nullable Object> phases() {
        return component("phase").examples().stream()
                .map(example -> example.with().get("phase"))
                .toList();
    }

    private static Map<String, Object> shell() {
        List<Map<String, String>> nav = Stream.of("score", "cases", "progress", "cohort")
                .map(key -> Map.of("key", key, "labelKey", "examples.nav." + key, "href", "/" + key, "figure", ""))
                .toList();
        return Map.of(
                "personName",
                "Dr Ottilie Brannock",
                "roleName",
                "supervisor",
                "organisationName",
                "Norrvale Filtration Surgery Programme",
                "nav",
                nav,
                "demo",
                true,
                "newDevice",
                false);
    }

    private static Map<String, @Nullable Object> first(String name) {
        return component(name).examples().get(0).with();
    }

    private static Component component(String name) {
        return Component.all().stream()
                .filter(component -> component.name().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
