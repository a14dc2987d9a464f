// SPDX-License-Identifier: Apache-2.0
package kerfglow.worker.process;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.Constants;
import org.osgi.framework.namespace.ExecutionEnvironmentNamespace;
import org.osgi.framework.wiring.BundleCapability;
import org.osgi.framework.wiring.BundleRequirement;
import org.osgi.framework.wiring.BundleRevision;

/** Says in words what a bundle asks for that is not there. */
final class Unresolved {
    private static final Pattern FROM = Pattern.compile("\\((?:bundle-)?version>=([0-9.]+)\\)");
    private static final Pattern BELOW = Pattern.compile("\\(!\\((?:bundle-)?version>=([0-9.]+)\\)\\)");
    private static final Pattern EXACT = Pattern.compile("\\((?:bundle-)?version=([0-9.]+)\\)");

    private final List<BundleCapability> there = new ArrayList<>();

    private Unresolved(BundleContext context) {
        for (Bundle bundle : context.getBundles()) {
            BundleRevision revision = bundle.adapt(BundleRevision.class);
            if (revision != null) {
                there.addAll(revision.getDeclaredCapabilities(null));
            }
        }
    }

    /** A clause for each thing that nobody has; empty when everything is there by itself. */
    static List<String> of(Bundle bundle, BundleContext context) {
        Unresolved unresolved = new Unresolved(context);
        Set<String> words = new LinkedHashSet<>();
        BundleRevision revision = bundle.adapt(BundleRevision.class);
        if (revision != null) {
            for (BundleRequirement requirement : revision.getDeclaredRequirements(null)) {
                boolean optional = Constants.RESOLUTION_OPTIONAL.equals(requirement.getDirectives().get(Constants.RESOLUTION_DIRECTIVE));
                if (!optional && unresolved.there.stream().noneMatch(requirement::matches)) {
                    words.add(unresolved.words(requirement));
                }
            }
        }
        return List.copyOf(words);
    }

    private String words(BundleRequirement requirement) {
        String filter = String.valueOf(requirement.getDirectives().get(Constants.FILTER_DIRECTIVE));
        String namespace = requirement.getNamespace();
        String name = value(filter, namespace);
        if (namespace.equals(ExecutionEnvironmentNamespace.EXECUTION_ENVIRONMENT_NAMESPACE)) {
            return "it needs " + name + versions(filter) + "; this is Java " + Runtime.version().feature();
        }
        boolean isBundle = namespace.equals(BundleRevision.BUNDLE_NAMESPACE);
        String what = namespace.equals(BundleRevision.PACKAGE_NAMESPACE) ? "package" : isBundle ? "bundle" : "capability " + namespace;
        String attribute = isBundle ? Constants.BUNDLE_VERSION_ATTRIBUTE : Constants.VERSION_ATTRIBUTE;
        String others = there.stream().filter(each -> each.getNamespace().equals(namespace) && name.equals(each.getAttributes().get(namespace)))
                .map(each -> String.valueOf(each.getAttributes().get(attribute))).distinct().collect(Collectors.joining(", "));
        return "it needs the " + what + " " + name + versions(filter)
                + (others.isEmpty() ? ", which neither this program nor a bundle in the folder has" : "; here there is version " + others);
    }

    private static String value(String filter, String namespace) {
        Matcher name = Pattern.compile("\\(" + Pattern.quote(namespace) + "=([^)]*)\\)").matcher(filter);
        return name.find() ? name.group(1) : filter;
    }

    private static String versions(String filter) {
        Matcher exact = EXACT.matcher(filter);
        Matcher below = BELOW.matcher(filter);
        Matcher from = FROM.matcher(filter.replaceAll(BELOW.pattern(), ""));
        return exact.find() ? " " + exact.group(1)
                : (from.find() ? ", version " + from.group(1) + " or later" : "") + (below.find() ? " but below " + below.group(1) : "");
    }
}
