package org.scrubline.browser;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Page;
import java.util.List;
import java.util.Map;

/** The accessibility check: WCAG 2.0, 2.1 and 2.2, levels A and AA, no rule left out, nothing excluded. */
public final class Axe {

    private static final List<String> TAGS = List.of("wcag2a", "wcag2aa", "wcag21aa", "wcag22aa");

    /**
     * Only what breaks a rule travels back, as lines: a long page has thousands of nodes that keep one, and carrying
     * them out of the browser took longer than the check itself.
     */
    private static final String RUN = """
            async (tags) => {
              const { passes, violations } = await axe.run(document, {
                runOnly: { type: 'tag', values: tags },
                resultTypes: ['violations'],
              });
              const line = (rule) => `${rule.id}: ${rule.help}` + rule.nodes
                .map((node) => `\n    ${node.target}  ${node.failureSummary}`).join('');
              return { checked: passes.length, broken: violations.map(line) };
            }
            """;

    private Axe() {}

    /**
     * Fails with rule ids and targets when the page breaks a rule, and when the check did not really run.
     *
     * @param page an open page, settled
     */
    public static void assertNoViolations(Page page) {
        if (page.evaluate("() => window.axe === undefined").equals(true)) {
            page.evaluate(AxeBuilder.getAxeScript());
        }
        Map<?, ?> result = (Map<?, ?>) page.evaluate(RUN, TAGS);
        if (Integer.valueOf(0).equals(result.get("checked"))) {
            throw new AssertionError("axe found nothing to check on " + page.url());
        }
        List<?> broken = (List<?>) result.get("broken");
        if (!broken.isEmpty()) {
            throw new AssertionError("axe on " + page.url() + "\n"
                    + String.join("\n", broken.stream().map(String::valueOf).toList()));
        }
    }
}
