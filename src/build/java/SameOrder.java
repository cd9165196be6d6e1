import java.lang.instrument.ClassFileTransformer;
import java.lang.instrument.Instrumentation;
import java.security.ProtectionDomain;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;

/**
 * An agent of the JVM that builds: whatever promises no order has one there, the same in each run.
 * A {@code HashMap} or {@code HashSet} is made as its linked kind, which is one and differs in
 * nothing but that it is gone through as it was filled; {@code Set.of} and {@code Map.of} are gone
 * through as if the clock, which the JDK asks once, had said 0. What is built has nothing of it.
 */
public final class SameOrder implements ClassFileTransformer {

  private static final Map<String, String> LINKED =
      Map.of(
          "java/util/HashMap", "java/util/LinkedHashMap",
          "java/util/HashSet", "java/util/LinkedHashSet");

  private static final String OF = "java/util/ImmutableCollections";
  private static final String COLLECTORS = "java/util/stream/Collectors";

  private SameOrder() {}

  public static void premain(String none, Instrumentation jvm) throws Exception {
    SameOrder order = new SameOrder();
    jvm.addTransformer(order, true);
    List<Class<?>> loaded = new ArrayList<>();
    for (Class<?> each : jvm.getAllLoadedClasses()) {
      String name = each.getName().replace('.', '/');
      if (ofJdk(name)) {
        loaded.add(each);
      }
    }
    jvm.retransformClasses(loaded.toArray(Class<?>[]::new));
  }

  private static boolean ofJdk(String name) {
    return name.equals(COLLECTORS) || name.startsWith(OF + "$");
  }

  @Override
  public byte[] transform(
      ClassLoader loader, String name, Class<?> old, ProtectionDomain domain, byte[] bytes) {
    boolean wanted =
        name != null
            && (ofJdk(name) || loader != null && !name.matches("(java|jdk|sun|com/sun)/.*"));
    if (!wanted) {
      return null;
    }
    try {
      ClassReader reader = new ClassReader(bytes);
      if (LINKED.containsKey(reader.getSuperName())) {
        return null;
      }
      ClassWriter writer = new ClassWriter(reader, 0);
      reader.accept(new Ordered(writer), 0);
      return writer.toByteArray();
    } catch (RuntimeException | Error e) {
      // a transformer that throws is passed over without a word
      System.err.println("SameOrder: " + name + ": " + e);
      return null;
    }
  }

  private static final class Ordered extends ClassVisitor {

    Ordered(ClassVisitor next) {
      super(Opcodes.ASM9, next);
    }

    @Override
    public MethodVisitor visitMethod(
        int access, String name, String descriptor, String signature, String[] exceptions) {
      MethodVisitor next = super.visitMethod(access, name, descriptor, signature, exceptions);
      return new MethodVisitor(Opcodes.ASM9, next) {

        @Override
        public void visitTypeInsn(int code, String type) {
          super.visitTypeInsn(code, code == Opcodes.NEW ? LINKED.getOrDefault(type, type) : type);
        }

        @Override
        public void visitMethodInsn(
            int code, String owner, String called, String descriptor, boolean ofInterface) {
          boolean made = code == Opcodes.INVOKESPECIAL && called.equals("<init>");
          super.visitMethodInsn(
              code,
              made ? LINKED.getOrDefault(owner, owner) : owner,
              called,
              descriptor,
              ofInterface);
        }

        @Override
        public void visitInvokeDynamicInsn(
            String called, String descriptor, Handle bootstrap, Object... arguments) {
          for (int i = 0; i < arguments.length; i++) {
            if (arguments[i] instanceof Handle made
                && made.getTag() == Opcodes.H_NEWINVOKESPECIAL
                && LINKED.containsKey(made.getOwner())) {
              arguments[i] =
                  new Handle(
                      made.getTag(),
                      LINKED.get(made.getOwner()),
                      made.getName(),
                      made.getDesc(),
                      made.isInterface());
            }
          }
          super.visitInvokeDynamicInsn(called, descriptor, bootstrap, arguments);
        }

        @Override
        public void visitFieldInsn(int code, String owner, String field, String descriptor) {
          if (code == Opcodes.GETSTATIC && owner.equals(OF) && field.equals("SALT32L")) {
            super.visitInsn(Opcodes.LCONST_0);
          } else if (code == Opcodes.GETSTATIC && owner.equals(OF) && field.equals("REVERSE")) {
            super.visitInsn(Opcodes.ICONST_0);
          } else {
            super.visitFieldInsn(code, owner, field, descriptor);
          }
        }
      };
    }
  }
}
