package org.scrubline.backup.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TableView;

/**
 * The page.
 *
 * @param backup what to think of the newest backup
 * @param facts the database and the newest backup
 * @param jobs one row a recurring job; null when there is none
 * @param waiting jobs asked for that wait or run
 */
record InstallationPage(
        Notice backup, List<Fact> facts, @Nullable TableView jobs, String waiting) {

    record Notice(String kind, String title, String text) {}

    record Fact(String name, String value) {}
}
