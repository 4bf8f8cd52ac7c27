package org.scrubline.archive;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.scrubline.platform.Csv;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;

/** Writes the archive as the rows are read; of a part only what the page shows of it is held. */
@Service
class ZippedArchive implements OwnArchive {

    /** Rows of a part on the page to read; the rest is in its file. */
    private static final int SHOWN = 200;

    private final ArchiveQueries queries;
    private final ITemplateEngine templates;
    private final Wording wording;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    ZippedArchive(
            ArchiveQueries queries,
            ITemplateEngine templates,
            Wording wording,
            ApplicationEventPublisher events,
            Clock clock) {
        this.queries = queries;
        this.templates = templates;
        this.wording = wording;
        this.events = events;
        this.clock = clock;
    }

    /** A part as the page shows it. */
    record Table(String file, String title, int rows, List<String> head, List<List<String>> shown) {}

    @Override
    @Transactional(readOnly = true)
    public List<Kept> kept(SignedIn who) {
        return ArchiveQueries.PARTS.stream()
                .map(part -> new Kept(part.name(), queries.count(part, who)))
                .toList();
    }

    @Override
    @Transactional(isolation = Isolation.REPEATABLE_READ)
    public void write(SignedIn who, OutputStream out) throws IOException {
        ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
        List<Table> tables = new ArrayList<>();
        for (Part part : ArchiveQueries.PARTS) {
            Table table = write(part, who, zip);
            if (table.rows() > 0) {
                tables.add(table);
            }
        }
        zip.putNextEntry(new ZipEntry("index.html"));
        zip.write(page(who, tables).getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
        zip.finish();
        events.publishEvent(ArchiveTaken.by(who));
    }

    private Table write(Part part, SignedIn who, ZipOutputStream zip) throws IOException {
        String file = part.name() + ".csv";
        List<List<String>> shown = new ArrayList<>();
        int[] lines = {0};
        queries.each(part, who, line -> {
            try {
                if (lines[0]++ == 0) {
                    zip.putNextEntry(new ZipEntry(file));
                }
                zip.write(Csv.line(line).getBytes(StandardCharsets.UTF_8));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            if (shown.size() <= SHOWN) {
                shown.add(line);
            }
        });
        String title = wording.text("archive.part." + part.name());
        if (lines[0] == 0) {
            return new Table(file, title, 0, List.of(), List.of());
        }
        zip.closeEntry();
        return new Table(file, title, lines[0] - 1, shown.get(0), shown.subList(1, shown.size()));
    }

    private String page(SignedIn who, List<Table> tables) {
        Map<String, Object> said = Map.of(
                "name",
                who.printedName(),
                "organisation",
                who.organisationName(),
                "at",
                clock.instant().truncatedTo(ChronoUnit.SECONDS).toString(),
                "tables",
                tables);
        return templates.process("archive/index", new Context(LocaleContextHolder.getLocale(), said));
    }
}
