package org.scrubline.people;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredSettings implements Settings {

    private final SettingStore store;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;
    private final Map<SettingKey, Integer> here;

    StoredSettings(
            SettingStore store,
            Ledger ledger,
            ApplicationEventPublisher events,
            Clock clock,
            @Value("${scrubline.second-factor.roles}") Set<Role> secondFactor) {
        this.store = store;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
        this.here = secondFactor.stream().collect(Collectors.toUnmodifiableMap(SettingKey::secondFactor, role -> 1));
    }

    @Override
    @Transactional(readOnly = true)
    public ProgrammeSettings of(UUID programmeId) {
        return newest(store.changes(programmeId));
    }

    @Override
    @Transactional(readOnly = true)
    public ProgrammeSettings of(UUID programmeId, Instant knownAt) {
        return newest(store.changes(programmeId).stream()
                .filter(change -> !change.changedAt().isAfter(knownAt))
                .toList());
    }

    private ProgrammeSettings newest(List<SettingChange> newestFirst) {
        Map<SettingKey, Integer> newest = new EnumMap<>(SettingKey.class);
        newestFirst.forEach(change -> newest.putIfAbsent(change.key(), change.value()));
        return new ProgrammeSettings(newest, here);
    }

    @Override
    @Transactional(readOnly = true)
    public List<SettingChange> history(UUID programmeId) {
        return store.changes(programmeId);
    }

    @Override
    public Attempt<ProgrammeSettings> change(
            SignedIn who, UUID programmeId, SettingKey key, String typed, String reason) {
        if (!who.has(Role.DIRECTOR, programmeId) && !who.has(Role.ADMINISTRATOR, programmeId)) {
            throw new NotFound();
        }
        String why = FreeText.tidy(reason);
        OptionalInt value = number(key, typed);
        List<Refusal> reasons = new ArrayList<>();
        if (value.isEmpty()) {
            reasons.add(Refusal.at("value", "refusal.setting.value", key.least(), key.most()));
        }
        if (why.isEmpty()) {
            reasons.add(Refusal.at("reason", "refusal.setting.reason"));
        }
        Optional<Refusal> text = FreeText.check("reason", why, REASON_LENGTH);
        text.ifPresent(reasons::add);
        return reasons.isEmpty()
                ? Attempt.done(set(who, programmeId, key, value.getAsInt(), why))
                : Attempt.refused(reasons);
    }

    private ProgrammeSettings set(SignedIn who, UUID programme, SettingKey key, int value, String why) {
        store.lock(programme);
        int before = of(programme).value(key);
        if (before != value) {
            SettingChange change = new SettingChange(
                    UUID.randomUUID(),
                    key,
                    value,
                    why,
                    who.printedName(),
                    clock.instant().truncatedTo(ChronoUnit.MICROS));
            store.insert(programme, who.personId(), change);
            ledger.append(LeafKind.SETTING, change.id());
            events.publishEvent(new SettingChanged(who, programme, change, before));
        }
        return of(programme);
    }

    private static OptionalInt number(SettingKey key, String typed) {
        String digits = typed.strip();
        if (!digits.matches("\\d{1,6}")) {
            return OptionalInt.empty();
        }
        int value = Integer.parseInt(digits);
        return key.takes(value) ? OptionalInt.of(value) : OptionalInt.empty();
    }
}
