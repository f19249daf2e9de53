export default function Page() {
  return (
    <main>
      <h1>Millrace</h1>
    </main>
  )
}
