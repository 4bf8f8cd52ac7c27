package org.scrubline.browser;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.AxeResults;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Page;
import java.util.List;
import java.util.stream.Collectors;

/** The accessibility check: WCAG 2.0, 2.1 and 2.2, levels A and AA, no rule left out, nothing excluded. */
public final class Axe {

    private static final List<String> TAGS = List.of("wcag2a", "wcag2aa", "wcag21aa", "wcag22aa");

    private Axe() {}

    /**
     * Fails with rule ids and targets when the page breaks a rule, and when the check did not really run.
     *
     * @param page an open page, settled
     */
    public static void assertNoViolations(Page page) {
        // Legacy mode stays in the page instead of opening another; it only leaves out frames from other origins.
        AxeResults results =
                new AxeBuilder(page).setLegacyMode(true).withTags(TAGS).analyze();
        if (results.getPasses().isEmpty()) {
            throw new AssertionError("axe found nothing to check on " + page.url());
        }
        if (!results.getViolations().isEmpty()) {
            String list = results.getViolations().stream().map(Axe::line).collect(Collectors.joining("\n"));
            throw new AssertionError("axe on " + page.url() + "\n" + list);
        }
    }

    private static String line(Rule rule) {
        String targets = rule.getNodes().stream()
                .map(node -> "\n    " + node.getTarget() + "  " + node.getFailureSummary())
                .collect(Collectors.joining());
        return rule.getId() + ": " + rule.getHelp() + targets;
    }
}
