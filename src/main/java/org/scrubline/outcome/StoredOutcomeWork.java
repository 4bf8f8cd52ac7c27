package org.scrubline.outcome;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.scrubline.outcome.WorkList.Line;
import org.scrubline.outcome.WorkList.Show;
import org.scrubline.people.Programme;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredOutcomeWork implements OutcomeWork {

    private static final Comparator<Line> LONGEST_DUE = Comparator.comparing(Line::due)
            .thenComparing(line -> line.of().reference())
            .thenComparing(line -> line.of().id());

    private final OutcomeProgrammes programmes;
    private final Clock clock;

    StoredOutcomeWork(OutcomeProgrammes programmes, Clock clock) {
        this.programmes = programmes;
        this.clock = clock;
    }

    @Override
    public WorkList read(SignedIn who, Wish wish) {
        List<Programme> open = programmes.of(who, Role.DIRECTOR, Role.ADMINISTRATOR, Role.SUPERVISOR, Role.TRAINEE);
        Programme programme = OutcomeProgrammes.chosen(open, wish.programme());
        boolean whole = who.has(Role.DIRECTOR, programme.id()) || who.has(Role.ADMINISTRATOR, programme.id());
        Instant now = clock.instant();
        Map<FiltrationCase, CaseOutcome> outcomes =
                programmes.outcomes(programmes.cases(programme.id(), null, whole ? null : who.personId()), now);
        Counting counting = new Counting(wish, now);
        outcomes.forEach(counting::add);
        counting.lines.sort(LONGEST_DUE);
        int matching = counting.lines.size();
        int page = Math.max(1, Math.min(wish.page(), (matching + WorkList.PAGE - 1) / WorkList.PAGE));
        return new WorkList(
                programme,
                open,
                whole,
                outcomes.size(),
                counting.noBaseline,
                counting.counts,
                counting.lines.subList(
                        Math.min(matching, (page - 1) * WorkList.PAGE), Math.min(matching, page * WorkList.PAGE)),
                matching,
                page);
    }

    /** Goes through the cases once. */
    private static final class Counting {

        private final Wish wish;
        private final Instant now;
        private final Map<FollowUp, Map<WindowState.State, Integer>> counts = new EnumMap<>(FollowUp.class);
        private final List<Line> lines = new ArrayList<>();
        private int noBaseline;

        Counting(Wish wish, Instant now) {
            this.wish = wish;
            this.now = now;
        }

        void add(FiltrationCase one, CaseOutcome outcome) {
            if (outcome.baseline().isEmpty()) {
                noBaseline++;
                if (wish.show() == Show.NO_BASELINE) {
                    lines.add(new Line(one, null, one.operatedOn(), one.operatedOn(), false));
                }
            }
            for (WindowState state : outcome.windows(LocalDate.ofInstant(now, one.zone()))) {
                counts.computeIfAbsent(state.window(), window -> new EnumMap<>(WindowState.State.class))
                        .merge(state.state(), 1, Integer::sum);
                if (wanted(state)) {
                    lines.add(new Line(
                            one,
                            state.window(),
                            state.window().due(one.operatedOn()),
                            state.window().until(one.operatedOn()),
                            state.state() == WindowState.State.OVERDUE));
                }
            }
        }

        private boolean wanted(WindowState state) {
            boolean shown = switch (wish.show()) {
                case OPEN -> state.state().open();
                case DUE -> state.state() == WindowState.State.DUE;
                case OVERDUE -> state.state() == WindowState.State.OVERDUE;
                case NO_BASELINE -> false;
            };
            return shown && (wish.window() == null || wish.window() == state.window());
        }
    }
}
