package org.scrubline.platform;

import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;

/**
 * The organisation the current thread works for. Every transaction begun inside carries it into the database, where
 * row-level security admits that organisation's rows and no others. Outside a scope no row is visible.
 */
public final class TenantScope {

    private static final ThreadLocal<UUID> CURRENT = new ThreadLocal<>();

    private TenantScope() {}

    public static Optional<UUID> current() {
        return Optional.ofNullable(CURRENT.get());
    }

    /** The organisation of this thread; a missing one is a bug in the caller. */
    public static UUID require() {
        return current().orElseThrow(() -> new IllegalStateException("no organisation is set on this thread"));
    }

    public static <T> T call(UUID tenantId, Supplier<T> work) {
        UUID before = CURRENT.get();
        CURRENT.set(tenantId);
        try {
            return work.get();
        } finally {
            if (before == null) {
                CURRENT.remove();
            } else {
                CURRENT.set(before);
            }
        }
    }

    public static void run(UUID tenantId, Runnable work) {
        call(tenantId, () -> {
            work.run();
            return true;
        });
    }
}
