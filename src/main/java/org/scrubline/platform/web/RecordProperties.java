package org.scrubline.platform.web;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.expression.AccessException;
import org.springframework.expression.EvaluationContext;
import org.springframework.expression.PropertyAccessor;
import org.springframework.expression.TypedValue;
import org.springframework.expression.spel.support.StandardEvaluationContext;
import org.springframework.stereotype.Component;
import org.thymeleaf.context.IContext;
import org.thymeleaf.context.StandardEngineContextFactory;
import org.thymeleaf.spring6.SpringTemplateEngine;
import org.thymeleaf.spring6.expression.ThymeleafEvaluationContext;

/**
 * Reads the components of our records in templates. The accessor that comes with the expressions is looked for anew at every
 * reading of every cell; one that is not its subclass is found once for each expression.
 */
@Component
class RecordProperties implements PropertyAccessor {

    private static final Class<?>[] RECORDS = {Record.class};
    private static final String OURS = "org.scrubline.";

    /** By class, the accessor method of each component; empty for records of others. */
    private static final ClassValue<Map<String, Method>> COMPONENTS = new ClassValue<>() {
        @Override
        protected Map<String, Method> computeValue(Class<?> type) {
            return type.isRecord() && type.getName().startsWith(OURS)
                    ? Arrays.stream(type.getRecordComponents())
                            .collect(Collectors.toUnmodifiableMap(RecordComponent::getName, RecordProperties::open))
                    : Map.of();
        }
    };

    RecordProperties(SpringTemplateEngine templates) {
        StandardEngineContextFactory standard = new StandardEngineContextFactory();
        templates.setEngineContextFactory((configuration, template, attributes, context) -> {
            read(context);
            return standard.createEngineContext(configuration, template, attributes, context);
        });
    }

    /** A page brings the context of its expressions with it; a printed document does not. */
    private void read(IContext context) {
        String name = ThymeleafEvaluationContext.THYMELEAF_EVALUATION_CONTEXT_CONTEXT_VARIABLE_NAME;
        if (context.getVariable(name) instanceof StandardEvaluationContext expressions
                && !expressions.getPropertyAccessors().contains(this)) {
            expressions.addPropertyAccessor(this);
        }
    }

    private static Method open(RecordComponent component) {
        Method accessor = component.getAccessor();
        accessor.setAccessible(true);
        return accessor;
    }

    @Override
    public Class<?>[] getSpecificTargetClasses() {
        return RECORDS.clone();
    }

    @Override
    public boolean canRead(EvaluationContext context, @Nullable Object target, String name) {
        return target != null && COMPONENTS.get(target.getClass()).containsKey(name);
    }

    /** Refuses what is no component of the target, which sends the expression to look for another accessor. */
    @Override
    public TypedValue read(EvaluationContext context, @Nullable Object target, String name) throws AccessException {
        Method accessor =
                target == null ? null : COMPONENTS.get(target.getClass()).get(name);
        if (accessor == null) {
            throw new AccessException("no component " + name);
        }
        try {
            return new TypedValue(accessor.invoke(target));
        } catch (IllegalAccessException | InvocationTargetException e) {
            throw new AccessException("component " + name + " could not be read", e);
        }
    }

    @Override
    public boolean canWrite(EvaluationContext context, @Nullable Object target, String name) {
        return false;
    }

    @Override
    public void write(EvaluationContext context, @Nullable Object target, String name, @Nullable Object value)
            throws AccessException {
        throw new AccessException("components of records are not written");
    }
}
