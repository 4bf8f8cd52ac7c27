package org.scrubline.backup.web;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.backup.BackupAge;
import org.scrubline.backup.Installation;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.scrubline.platform.jobs.JobRun;
import org.scrubline.platform.jobs.JobRuns;
import org.springframework.stereotype.Component;

/** Puts the state of the installation into words. */
@Component
class InstallationPages {

    private static final DateTimeFormatter MOMENT =
            DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm 'UTC'", Locale.UK).withZone(ZoneOffset.UTC);
    private static final String NOTHING = "–";

    private final Installation installation;
    private final JobRuns jobs;
    private final Wording wording;

    InstallationPages(Installation installation, JobRuns jobs, Wording wording) {
        this.installation = installation;
        this.jobs = jobs;
        this.wording = wording;
    }

    InstallationPage page() {
        BackupAge backup = installation.newestBackup();
        List<JobRun> runs = jobs.all();
        List<JobRun> recurring = runs.stream().filter(run -> run.key() == null).toList();
        int waiting = runs.size() - recurring.size();
        return new InstallationPage(
                notice(backup),
                facts(backup),
                recurring.isEmpty() ? null : table(recurring),
                text("jobs.waiting", waiting));
    }

    private InstallationPage.Notice notice(BackupAge backup) {
        String name = "backup." + backup.state().name();
        boolean fine = backup.state() == BackupAge.State.RECENT || backup.state() == BackupAge.State.NOT_HERE;
        return new InstallationPage.Notice(
                fine ? "plain" : "careful",
                text(name + ".title"),
                text(name + ".text", backup.age() == null ? 0 : backup.age().toHours(), BackupAge.OLD.toHours()));
    }

    private List<InstallationPage.Fact> facts(BackupAge backup) {
        Installation.Database database = installation.database();
        List<InstallationPage.Fact> facts = new ArrayList<>();
        facts.add(fact("database", text("database." + database.kind().name(), database.version())));
        facts.add(fact("schema", database.schema()));
        if (backup.created() != null) {
            facts.add(fact("newest", moment(backup.created())));
            facts.add(fact("size", size(backup.bytes())));
        }
        return facts;
    }

    private InstallationPage.Fact fact(String key, String value) {
        return new InstallationPage.Fact(text("fact." + key), value);
    }

    private TableView table(List<JobRun> recurring) {
        List<Column> columns = Stream.of("job", "last", "ended", "next")
                .map(key -> new Column(text("jobs." + key), false))
                .toList();
        return new TableView(columns, recurring.stream().map(this::row).toList());
    }

    private List<Cell> row(JobRun run) {
        Instant last = run.outcome() == JobRun.Outcome.FAILURE ? run.lastFailure() : run.lastSuccess();
        return Stream.of(
                        run.job(),
                        moment(last),
                        text("jobs.outcome." + run.outcome().name(), run.failuresInARow()),
                        run.running() ? text("jobs.running") : moment(run.next()))
                .map(Cell::of)
                .toList();
    }

    private static String moment(@Nullable Instant instant) {
        return instant == null ? NOTHING : MOMENT.format(instant);
    }

    /** In thousands and millions of bytes, as disks are sold. */
    private String size(long bytes) {
        return bytes < 1_000_000
                ? text("size.kb", Math.max(1, Math.round(bytes / 1e3)))
                : text("size.mb", Math.round(bytes / 1e6));
    }

    private String text(String key, Object... arguments) {
        return wording.text("installation." + key, arguments);
    }
}
