package org.scrubline.people.web;

import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Placement;
import org.scrubline.people.PlacementWords;
import org.scrubline.people.Placements;
import org.scrubline.people.Programme;
import org.scrubline.people.Site;
import org.scrubline.people.TrainingTime;
import org.scrubline.platform.Role;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Component;

/** Makes the page of placements: who is where, as a list and month by month, with the gaps. */
@Component
class PlacementPages {

    private static final int MONTHS = 12;
    private static final int MONTHS_BACK = 6;
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM uu", Locale.UK);

    private final Placements placements;
    private final PlacementWords words;
    private final People people;
    private final Wording wording;
    private final Clock clock;

    PlacementPages(Placements placements, PlacementWords words, People people, Wording wording, Clock clock) {
        this.placements = placements;
        this.words = words;
        this.people = people;
        this.wording = wording;
        this.clock = clock;
    }

    /**
     * The page.
     *
     * @param months a row a trainee, a column a month
     * @param earlier month the table of before begins with; {@code later} likewise
     * @param endable placements whose last day can still be an earlier one
     */
    record PlacementsPage(
            String programme,
            String programmeName,
            TableView list,
            TableView months,
            String earlier,
            String later,
            List<ZoneOptions.Option> trainees,
            List<ZoneOptions.Option> sites,
            List<ZoneOptions.Option> endable) {}

    PlacementsPage of(Programme programme, @Nullable YearMonth from) {
        List<Placement> all = placements.of(programme.id());
        LocalDate today = LocalDate.ofInstant(clock.instant(), programme.zone());
        YearMonth begin = from == null ? YearMonth.from(today).minusMonths(MONTHS_BACK) : from;
        Map<UUID, String> names = names(programme, all);
        Map<UUID, Site> sites = people.sites().stream().collect(Collectors.toMap(Site::id, site -> site));
        return new PlacementsPage(
                programme.id().toString(),
                programme.name(),
                list(all, names),
                months(all, names, sites, begin),
                begin.minusMonths(MONTHS).toString(),
                begin.plusMonths(MONTHS).toString(),
                people.holding(programme.id(), Role.TRAINEE).stream()
                        .map(one -> new ZoneOptions.Option(one.id().toString(), one.printedName()))
                        .toList(),
                people.sites().stream()
                        .filter(site -> site.open(today))
                        .map(site -> new ZoneOptions.Option(site.id().toString(), site.name()))
                        .toList(),
                all.stream()
                        .filter(Placement::began)
                        .map(one -> new ZoneOptions.Option(
                                one.id().toString(), names.get(one.traineeId()) + ", " + words.said(one)))
                        .toList());
    }

    /** Trainees of now, and whoever has a placement. */
    private Map<UUID, String> names(Programme programme, List<Placement> all) {
        Map<UUID, String> names = new LinkedHashMap<>();
        people.holding(programme.id(), Role.TRAINEE).forEach(one -> names.put(one.id(), one.printedName()));
        all.forEach(one -> names.computeIfAbsent(
                one.traineeId(),
                id -> people.person(id).map(Person::printedName).orElse("")));
        return names;
    }

    private TableView list(List<Placement> all, Map<UUID, String> names) {
        List<List<Cell>> rows = new ArrayList<>();
        all.forEach(one ->
                rows.add(Stream.concat(Stream.of(names.getOrDefault(one.traineeId(), "")), words.cells(one).stream())
                        .map(Cell::of)
                        .toList()));
        return new TableView(
                Stream.of("trainee", "site", "first", "last", "share", "note")
                        .map(key -> new Column(wording.text("placements." + key), key.equals("share")))
                        .toList(),
                rows);
    }

    private TableView months(List<Placement> all, Map<UUID, String> names, Map<UUID, Site> sites, YearMonth begin) {
        List<YearMonth> months =
                IntStream.range(0, MONTHS).mapToObj(begin::plusMonths).toList();
        List<Column> columns = Stream.concat(
                        Stream.of(new Column(wording.text("placements.trainee"), false)),
                        months.stream().map(month -> new Column(MONTH.format(month), false)))
                .toList();
        List<List<Cell>> rows = new ArrayList<>();
        names.forEach((id, name) -> {
            TrainingTime time = new TrainingTime(
                    all.stream().filter(one -> one.traineeId().equals(id)).toList());
            rows.add(Stream.concat(Stream.of(name), months.stream().map(month -> month(time, month, sites)))
                    .map(Cell::of)
                    .toList());
        });
        return new TableView(columns, rows);
    }

    /** The sites of a month in their order, and how many days of it are a gap. */
    private String month(TrainingTime time, YearMonth month, Map<UUID, Site> sites) {
        Stream<String> at = time.placements().stream()
                .filter(one -> !one.first().isAfter(month.atEndOfMonth())
                        && !one.last().isBefore(month.atDay(1)))
                .map(one -> code(one, sites))
                .distinct();
        long free = time.gaps().stream()
                .mapToLong(gap -> month.atDay(1)
                        .datesUntil(month.plusMonths(1).atDay(1))
                        .filter(day -> !day.isBefore(gap.first()) && !day.isAfter(gap.last()))
                        .count())
                .sum();
        Stream<String> gap = free > 0 ? Stream.of(wording.text("placements.gap", free)) : Stream.empty();
        return Stream.concat(at, gap).collect(Collectors.joining(", "));
    }

    private String code(Placement one, Map<UUID, Site> sites) {
        Site site = sites.get(one.siteId());
        String code = site == null ? "" : site.code();
        return one.share() == 100 ? code : wording.text("placements.at-share", code, one.share());
    }
}
